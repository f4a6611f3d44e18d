package coldproof.reason.sizing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** The plans none of which is beaten in both power and time. */
final class Frontier {
    private static final double LEAST_STEP = 0.005; // of power; smaller steps are not worth a line
    private final Powers powers;
    private final boolean byOutdoors;

    Frontier(Powers powers, boolean byOutdoors) {
        this.powers = powers;
        this.byOutdoors = byOutdoors;
    }

    /**
     * Goes from the least time to the most and keeps what adds power. Only plans that no other known to add nothing beats in precision, and
     * that could add something, are asked for their power.
     */
    List<PlannedStudy> of(List<Candidate> plans, double mostWeightedSeconds) {
        List<Candidate> sorted = new ArrayList<>(plans.stream().filter(plan -> plan.weightedSeconds() <= mostWeightedSeconds).toList());
        sorted.sort(Comparator.comparingDouble((Candidate plan) -> seconds(plan)).thenComparingDouble(Candidate::standardErrorLog)
                .thenComparingDouble(Candidate::weightedSeconds));
        List<PlannedStudy> frontier = new ArrayList<>();
        List<Candidate> asked = new ArrayList<>();
        List<Candidate> tooWeak = new ArrayList<>(); // at an earlier time
        double most = 0;
        for (Candidate plan : sorted) {
            boolean sameTime = !frontier.isEmpty() && seconds(plan) == seconds(frontier.get(frontier.size() - 1));
            if (powers.anyNoWorse(asked, plan) || !sameTime && powers.anyNoWorse(tooWeak, plan)) {
                continue;
            }
            if (powers.atMost(plan) <= (sameTime ? most : most + LEAST_STEP)) {
                powers.keep(tooWeak, plan);
                continue;
            }
            powers.keep(asked, plan);
            PlannedStudy one = powers.planned(plan);
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

    private double seconds(Candidate plan) {
        return byOutdoors ? plan.outdoorsSeconds() : plan.totalSeconds();
    }

    private double seconds(PlannedStudy plan) {
        return byOutdoors ? plan.outdoorsSeconds() : plan.totalSeconds();
    }
}
