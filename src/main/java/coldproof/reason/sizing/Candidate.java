package coldproof.reason.sizing;

import java.util.Arrays;

/**
 * A plan under examination.
 *
 * @param fits whether it keeps within the limits
 */
record Candidate(int baselineSessions, int againstSessions, int trialsPerCondition, double standardErrorLog, int degrees, int trials,
        double totalSeconds, double outdoorsSeconds, int outings, double weightedSeconds, boolean fits) {
    /** Prices a plan that gives every changed level as many sessions. Where levels share sessions, the two counts name the same ones. */
    static Candidate of(PlanSpace space, int baselineSessions, int againstSessions, int trialsPerCondition, StudyLimits limits) {
        int[] against = new int[space.sharesSessions() ? 1 : space.cost().against().size()];
        Arrays.fill(against, againstSessions);
        Price price = Price.of(space, space.sharesSessions() ? 0 : baselineSessions, against, trialsPerCondition, limits);
        return new Candidate(baselineSessions, againstSessions, trialsPerCondition,
                space.standardErrorLog(baselineSessions, againstSessions, trialsPerCondition),
                space.degreesOfFreedom(baselineSessions, againstSessions, trialsPerCondition), price.trials(), price.totalSeconds(),
                price.outdoorsSeconds(), price.outings(), price.weightedSeconds(), price.fits());
    }

    PlannedStudy planned(double power) {
        return new PlannedStudy(baselineSessions, againstSessions, trialsPerCondition, power, standardErrorLog, degrees, trials,
                totalSeconds, outdoorsSeconds, outings, weightedSeconds);
    }
}
