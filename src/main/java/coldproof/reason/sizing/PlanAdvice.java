package coldproof.reason.sizing;

import coldproof.reason.sizing.StudyLimits.Limit;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What the search for the cheapest plan found, and what the choice rests on.
 *
 * @param wantedPower the power asked for
 * @param best the cheapest plan within the limits that reaches it; empty when none does
 * @param strongest the plan of highest power within the limits, the cheaper one of equals; empty when the limits allow no study at all
 * @param equal the cheapest plan with as many sessions of one level as of the other; empty when none reaches the power, or levels share
 *     sessions
 * @param runnersUp the next best plans that reach the power, none with the same counts of sessions, cheapest first
 * @param frontier plans none of which is beaten in both power and time outdoors (in time altogether, where nobody goes outdoors), among
 *     those at most {@link CheapestPlan#FRONTIER_STRETCH} times as costly as the best; from the least time on
 * @param lifted for each limit that was set and binds: the best plan were it lifted
 * @param trialsOptimum the number of trials in a session that costs least for continuous counts,
 *     {@code sqrt(cost of opening / cost of a trial * run variance / session variance)}; infinite without session noise
 * @param ratioOptimum sessions of the baseline for one of the changed level that cost least for continuous counts, the square root of the
 *     ratio of their costs; 1 where levels share sessions
 * @param examined how many plans were looked at
 */
public record PlanAdvice(double wantedPower, Optional<PlannedStudy> best, Optional<PlannedStudy> strongest, Optional<PlannedStudy> equal,
        List<PlannedStudy> runnersUp, List<PlannedStudy> frontier, Map<Limit, PlannedStudy> lifted, double trialsOptimum,
        double ratioOptimum, long examined) {
    /** Copies. */
    public PlanAdvice {
        runnersUp = List.copyOf(runnersUp);
        frontier = List.copyOf(frontier);
        Map<Limit, PlannedStudy> copy = new EnumMap<>(Limit.class);
        copy.putAll(lifted);
        lifted = Collections.unmodifiableMap(copy);
    }
}
