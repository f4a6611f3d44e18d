package coldproof.reason.sizing;

import coldproof.reason.sizing.StudyLimits.Limit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Finds the cheapest study that can decide, by looking at every number of sessions per level and of trials per session within the limits:
 * the exact optimum, no sampling. Counts of baseline and changed level may differ; several changed levels have equal counts.
 *
 * <p>A level per session: the log change has variance {@code (session^2 + run^2/(r c)) (1/k0 + 1/k1)} with {@code k0 + m k1 - m - 1} degrees
 * of freedom, for k0 sessions of the baseline and k1 of each of m changed levels, of r trials in each of c conditions. All levels in every
 * session: {@code 2 run^2 / (r c k)} with {@code (m + 1) (r c k - c) - k + 1}, for k sessions of r trials of each level in each of c conditions
 * of one other factor.
 *
 * @see "T. Kalibera, R. Jones, Rigorous Benchmarking in Reasonable Time, ISMM 2013, 63-74, for the continuous optimum (from memory)"
 */
public final class CheapestPlan {
    /** How much costlier than the best a plan of the frontier may be. */
    public static final double FRONTIER_STRETCH = 1.5;
    private static final int RUNNERS_UP = 3;
    private static final double CHEAPER = 1e-9; // relative; plans closer than this cost the same
    private static final Comparator<Candidate> CHEAPEST = Comparator.comparingDouble(Candidate::weightedSeconds)
            .thenComparingDouble(Candidate::standardErrorLog).thenComparingInt(Candidate::againstSessions)
            .thenComparingInt(Candidate::baselineSessions);
    private final PlanSpace space;
    private final StudyLimits limits;
    private final Powers powers;
    private long examined;

    private CheapestPlan(PlanSpace space, StudyLimits limits, Powers powers) {
        this.space = space;
        this.limits = limits;
        this.powers = powers;
    }

    /**
     * Searches.
     *
     * @param space what may be varied, its noise and its costs
     * @param limits what must not be exceeded
     * @param power what a study of given precision can decide
     * @param wanted the power wanted, in (0, 1)
     */
    public static PlanAdvice search(PlanSpace space, StudyLimits limits, DecisionPower power, double wanted) {
        if (!(wanted > 0 && wanted < 1)) {
            throw new IllegalArgumentException("wanted power " + wanted + " is outside (0, 1)");
        }
        Powers powers = new Powers(power, wanted, space.standardErrorLog(4, 4, 2));
        return new CheapestPlan(space, limits, powers).advice(wanted);
    }

    private PlanAdvice advice(double wanted) {
        List<Candidate> allowed = allowed();
        allowed.sort(CHEAPEST);
        Optional<PlannedStudy> best = firstReaching(allowed.stream());
        Optional<PlannedStudy> equal = space.sharesSessions() ? Optional.empty()
                : firstReaching(allowed.stream().filter(plan -> plan.baselineSessions() == plan.againstSessions()));
        double costliest = best.map(plan -> FRONTIER_STRETCH * plan.weightedSeconds()).orElse(Double.POSITIVE_INFINITY);
        List<PlannedStudy> frontier = new Frontier(powers, space.anyOutdoors()).of(allowed, costliest);
        return new PlanAdvice(wanted, best, strongest(allowed), equal, best.isEmpty() ? List.of() : runnersUp(allowed), frontier, lifted(best),
                space.trialsOptimum(), space.ratioOptimum(), examined);
    }

    /** The first plan of a stream, ordered by its source, that reaches the power. */
    private Optional<PlannedStudy> firstReaching(Stream<Candidate> cheapestFirst) {
        return cheapestFirst.filter(powers::reaches).findFirst().map(powers::planned);
    }

    private List<Candidate> allowed() {
        List<Candidate> allowed = new ArrayList<>();
        int mostSessions = limits.count(Limit.SESSIONS_PER_LEVEL);
        for (int trials = 1; trials <= limits.count(Limit.TRIALS_PER_CONDITION); trials++) {
            for (int against = space.leastSessions(); against <= mostSessions; against++) {
                int from = space.sharesSessions() ? against : space.leastSessions();
                int to = space.sharesSessions() ? against : mostSessions;
                for (int baseline = from; baseline <= to; baseline++) {
                    Candidate plan = Candidate.of(space, baseline, against, trials, limits);
                    examined++;
                    if (!plan.fits()) {
                        break; // a further session of the baseline would fit no better
                    }
                    if (plan.degrees() >= 1) {
                        allowed.add(plan);
                    }
                }
            }
        }
        return allowed;
    }

    /** Only plans of a precision beaten by none can be the strongest. */
    private Optional<PlannedStudy> strongest(List<Candidate> allowed) {
        List<Candidate> sorted = new ArrayList<>(allowed);
        sorted.sort(Comparator.comparingDouble(Candidate::standardErrorLog).thenComparing(CHEAPEST));
        Optional<PlannedStudy> strongest = Optional.empty();
        List<Candidate> weighed = new ArrayList<>();
        for (Candidate plan : sorted) {
            if (powers.anyNoWorse(weighed, plan)) {
                continue;
            }
            powers.keep(weighed, plan);
            double most = strongest.map(PlannedStudy::power).orElse(-1.0);
            if (powers.atMost(plan) > most) {
                PlannedStudy one = powers.planned(plan);
                strongest = one.power() > most ? Optional.of(one) : strongest;
            }
        }
        return strongest;
    }

    private List<PlannedStudy> runnersUp(List<Candidate> cheapestFirst) {
        List<Candidate> chosen = new ArrayList<>();
        for (Candidate plan : cheapestFirst) {
            boolean seen = chosen.stream().anyMatch(other -> other.baselineSessions() == plan.baselineSessions()
                    && other.againstSessions() == plan.againstSessions());
            if (!seen && powers.reaches(plan)) {
                chosen.add(plan);
            }
            if (chosen.size() > RUNNERS_UP) {
                break;
            }
        }
        return chosen.stream().skip(1).map(powers::planned).toList();
    }

    private Map<Limit, PlannedStudy> lifted(Optional<PlannedStudy> best) {
        double cheaper = best.map(plan -> plan.weightedSeconds() * (1 - CHEAPER)).orElse(Double.POSITIVE_INFINITY);
        Map<Limit, PlannedStudy> found = new EnumMap<>(Limit.class);
        for (Limit limit : limits.most().keySet()) {
            CheapestPlan freer = new CheapestPlan(space, limits.without(limit), powers);
            firstReaching(freer.allowed().stream().filter(plan -> plan.weightedSeconds() < cheaper).sorted(CHEAPEST))
                    .ifPresent(plan -> found.put(limit, plan));
            examined += freer.examined;
        }
        return found;
    }
}
