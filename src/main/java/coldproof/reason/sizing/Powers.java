package coldproof.reason.sizing;

import java.util.List;

/** Asks a power about plans, and tells where it need not be asked. */
final class Powers {
    private final DecisionPower power;
    private final LargestStandardError largest;

    /** {@code likely} is a standard error of a likely size. */
    Powers(DecisionPower power, double wanted, double likely) {
        this.power = power;
        largest = new LargestStandardError(power, wanted, likely);
    }

    /** Whether the plan reaches the wanted power. */
    boolean reaches(Candidate plan) {
        return largest.allows(plan.standardErrorLog(), plan.degrees(), loading(plan));
    }

    /** The plan with its power. */
    PlannedStudy planned(Candidate plan) {
        return plan.planned(power.of(plan.standardErrorLog(), plan.degrees(), loading(plan)));
    }

    /** A bound the plan's power cannot exceed. */
    double atMost(Candidate plan) {
        return power.atMost(plan.standardErrorLog(), plan.degrees(), loading(plan));
    }

    /** Whether nothing about the plan's precision is better than about one of the others, so that its power cannot be. */
    boolean anyNoWorse(List<Candidate> others, Candidate plan) {
        for (Candidate other : others) {
            if (isNoBetter(plan, other)) {
                return true;
            }
        }
        return false;
    }

    /** Adds a plan and drops those that it makes needless. */
    void keep(List<Candidate> others, Candidate plan) {
        others.removeIf(other -> isNoBetter(other, plan));
        others.add(plan);
    }

    private boolean isNoBetter(Candidate plan, Candidate than) {
        return plan.standardErrorLog() >= than.standardErrorLog() && plan.degrees() <= than.degrees() && loading(plan) <= loading(than);
    }

    private double loading(Candidate plan) {
        return power.loading(plan.baselineSessions(), plan.againstSessions());
    }
}
