package coldproof.reason.sizing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Function;

/** The plans none of which is beaten in both power and time. */
final class Frontier {
    private static final double LEAST_STEP = 0.005; // of power; smaller steps are not worth a line
    private final Function<Candidate, PlannedStudy> power;
    private final boolean byOutdoors;

    Frontier(Function<Candidate, PlannedStudy> power, boolean byOutdoors) {
        this.power = power;
        this.byOutdoors = byOutdoors;
    }

    /**
     * Goes from the least time to the most and keeps what adds power. Of plans that take the same time only those beaten by none in both
     * standard error and degrees of freedom are asked for their power.
     */
    List<PlannedStudy> of(List<Candidate> plans, double mostWeightedSeconds) {
        List<Candidate> sorted = new ArrayList<>(plans.stream().filter(plan -> plan.weightedSeconds() <= mostWeightedSeconds).toList());
        sorted.sort(Comparator.comparingDouble((Candidate plan) -> seconds(plan)).thenComparingDouble(Candidate::standardErrorLog)
                .thenComparingDouble(Candidate::weightedSeconds));
        List<PlannedStudy> frontier = new ArrayList<>();
        List<Candidate> asked = new ArrayList<>();
        double most = 0;
        for (Candidate plan : sorted) {
            if (asked.stream().anyMatch(other -> isNoBetter(plan, other))) {
                continue;
            }
            asked.removeIf(other -> isNoBetter(other, plan));
            asked.add(plan);
            PlannedStudy one = power.apply(plan);
            boolean sameTime = !frontier.isEmpty() && seconds(one) == seconds(frontier.get(frontier.size() - 1));
            if (one.power() > most + LEAST_STEP || (sameTime && one.power() > most)) {
                if (sameTime) {
                    frontier.remove(frontier.size() - 1);
                }
                frontier.add(one);
                most = one.power();
            }
        }
        return frontier;
    }

    private static boolean isNoBetter(Candidate plan, Candidate than) {
        return plan.standardErrorLog() >= than.standardErrorLog() && plan.degrees() <= than.degrees();
    }

    private double seconds(Candidate plan) {
        return byOutdoors ? plan.outdoorsSeconds() : plan.totalSeconds();
    }

    private double seconds(PlannedStudy plan) {
        return byOutdoors ? plan.outdoorsSeconds() : plan.totalSeconds();
    }
}
