package coldproof.reason.sizing;

import coldproof.reason.sizing.StudyLimits.Limit;

/**
 * A plan under examination.
 *
 * @param fits whether it keeps within the limits
 */
record Candidate(int baselineSessions, int againstSessions, int trialsPerCondition, double standardErrorLog, int degrees, int trials,
        double totalSeconds, double outdoorsSeconds, int outings, double weightedSeconds, boolean fits) {
    /** Prices a plan. Where levels share sessions, the two counts name the same ones. */
    static Candidate of(PlanSpace space, int baselineSessions, int againstSessions, int trialsPerCondition, StudyLimits limits) {
        StudyCost cost = space.cost();
        int perSession = space.trialsPerSession(trialsPerCondition);
        int ofBaseline = space.sharesSessions() ? 0 : baselineSessions;
        double baselineSession = cost.baseline().openingSeconds() + perSession * cost.trialSeconds();
        double againstSession = cost.against().openingSeconds() + perSession * cost.trialSeconds();
        boolean fits = space.wattHours(trialsPerCondition) <= limits.of(Limit.BATTERY);
        double outdoors = 0;
        int outings = 0;
        int days = 0;
        for (boolean changed : new boolean[] {false, true}) {
            int sessions = changed ? againstSessions : ofBaseline;
            double session = changed ? againstSession : baselineSession;
            if (sessions > 0 && (changed ? cost.against() : cost.baseline()).outdoors()) {
                Outings packed = new Outings(session, space.wattHours(trialsPerCondition), cost.travelSecondsPerOuting(), limits);
                fits = fits && packed.possible();
                outdoors += sessions * session;
                outings += packed.count(sessions);
                days += packed.days(sessions);
            }
        }
        double total = ofBaseline * baselineSession + againstSessions * againstSession + outings * cost.travelSecondsPerOuting();
        fits = fits && days <= limits.of(Limit.DAYS) && outdoors <= limits.of(Limit.OUTDOORS_IN_ALL)
                && total <= limits.of(Limit.TIME_IN_ALL);
        return new Candidate(baselineSessions, againstSessions, trialsPerCondition,
                space.standardErrorLog(baselineSessions, againstSessions, trialsPerCondition),
                space.degreesOfFreedom(baselineSessions, againstSessions, trialsPerCondition), perSession * (ofBaseline + againstSessions),
                total, outdoors, outings, total + (cost.outdoorWeight() - 1) * outdoors, fits);
    }

    PlannedStudy planned(double power) {
        return new PlannedStudy(baselineSessions, againstSessions, trialsPerCondition, power, standardErrorLog, degrees, trials,
                totalSeconds, outdoorsSeconds, outings, weightedSeconds);
    }
}
