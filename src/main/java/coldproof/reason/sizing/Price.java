package coldproof.reason.sizing;

import coldproof.reason.sizing.StudyLimits.Limit;

/**
 * What a study takes.
 *
 * @param trials in all
 * @param totalSeconds in all, travel included, s
 * @param outdoorsSeconds outdoors, travel left out, s
 * @param outings how often the person goes out
 * @param weightedSeconds in all, with seconds outdoors counted by their weight
 * @param fits whether it keeps within the limits
 */
record Price(int trials, double totalSeconds, double outdoorsSeconds, int outings, double weightedSeconds, boolean fits) {
    /**
     * Of so many sessions.
     *
     * @param ofBaseline sessions of the baseline; 0 where levels share sessions
     * @param ofChanged sessions of each level whose cost the space has; where levels share sessions, all of them
     */
    static Price of(PlanSpace space, int ofBaseline, int[] ofChanged, int trialsPerCondition, StudyLimits limits) {
        StudyCost cost = space.cost();
        int perSession = space.trialsPerSession(trialsPerCondition);
        boolean fits = space.wattHours(trialsPerCondition) <= limits.of(Limit.BATTERY);
        double total = 0;
        double outdoors = 0;
        int outings = 0;
        int days = 0;
        int all = 0;
        for (int level = -1; level < ofChanged.length; level++) {
            int sessions = level < 0 ? ofBaseline : ofChanged[level];
            SessionCost opening = level < 0 ? cost.baseline() : cost.against().get(level);
            double session = opening.openingSeconds() + perSession * cost.trialSeconds();
            total += sessions * session;
            all += sessions;
            if (sessions > 0 && opening.outdoors()) {
                Outings packed = new Outings(session, space.wattHours(trialsPerCondition), cost.travelSecondsPerOuting(), limits);
                fits = fits && packed.possible();
                outdoors += sessions * session;
                outings += packed.count(sessions);
                days += packed.days(sessions);
            }
        }
        total += outings * cost.travelSecondsPerOuting();
        fits = fits && days <= limits.of(Limit.DAYS) && outdoors <= limits.of(Limit.OUTDOORS_IN_ALL)
                && total <= limits.of(Limit.TIME_IN_ALL);
        return new Price(perSession * all, total, outdoors, outings, total + (cost.outdoorWeight() - 1) * outdoors, fits);
    }
}
