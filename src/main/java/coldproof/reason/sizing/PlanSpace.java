package coldproof.reason.sizing;

import java.util.function.IntUnaryOperator;
import java.util.function.ToDoubleFunction;

/**
 * What the search may vary: its kind, its noise and its costs.
 *
 * @param sharesSessions whether every session has both levels (a factor set per trial), or each session one of them
 * @param runLogSd run-to-run log standard deviation, above 0
 * @param sessionLogSd session-to-session log standard deviation, 0 or more; does not matter where levels share sessions
 * @param conditions how many conditions of the other per-trial factors each session goes through, 1 or more
 * @param leastSessions fewest sessions of a level, 1 or more where levels share sessions, else 2 or more: one session of a level cannot
 *     tell the level from the day
 * @param cost what things cost; where levels share sessions, a session costs what one of the (first) changed level does
 * @param levels of the compared factor
 */
public record PlanSpace(boolean sharesSessions, double runLogSd, double sessionLogSd, int conditions, int leastSessions,
        StudyCost cost, Levels levels) {
    /**
     * Levels of the compared factor. Those changed get the same number of sessions, or of trials in each session.
     *
     * @param changes how many changed levels are judged, 1 or more
     * @param run levels that each session has, where levels share sessions: baseline, changes and any others
     * @param effects how many effects the verdict takes out of the trials of shared sessions before it looks at their noise, by the degrees of
     *     freedom these have without the sessions' own
     */
    public record Levels(int changes, int run, IntUnaryOperator effects) {
        /** One change; with other conditions, they and what the change does in each are taken out too. */
        static Levels ofOneChange(int conditions) {
            return new Levels(1, 2, left -> 1 + 2 * (conditions - 1));
        }
    }

    /** One changed level. */
    public PlanSpace(boolean sharesSessions, double runLogSd, double sessionLogSd, int conditions, int leastSessions, StudyCost cost) {
        this(sharesSessions, runLogSd, sessionLogSd, conditions, leastSessions, cost, Levels.ofOneChange(conditions));
    }

    /** Refuses what is out of range. */
    public PlanSpace {
        if (!(runLogSd > 0 && runLogSd < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("runLogSd " + runLogSd + " must be finite and above 0");
        }
        if (!(sessionLogSd >= 0 && sessionLogSd < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("sessionLogSd " + sessionLogSd + " must be finite and 0 or more");
        }
        if (conditions < 1) {
            throw new IllegalArgumentException("conditions " + conditions + " must be 1 or more");
        }
        if (leastSessions < (sharesSessions ? 1 : 2)) {
            throw new IllegalArgumentException("leastSessions " + leastSessions + " must be " + (sharesSessions ? 1 : 2) + " or more");
        }
    }

    /** A level per session: what is compared is hard to change. */
    public static PlanSpace ofSessionFactor(double runLogSd, double sessionLogSd, int conditions, StudyCost cost) {
        return new PlanSpace(false, runLogSd, sessionLogSd, conditions, 2, cost);
    }

    /** Both levels in every session: what is compared is easy to change. */
    public static PlanSpace ofTrialFactor(double runLogSd, int conditions, StudyCost cost) {
        return new PlanSpace(true, runLogSd, 0, conditions, 1, cost);
    }

    int trialsPerSession(int trialsPerCondition) {
        return trialsPerCondition * conditions * (sharesSessions ? levels.run() : 1);
    }

    double standardErrorLog(int baselineSessions, int againstSessions, int trialsPerCondition) {
        double runVariance = runLogSd * runLogSd / (trialsPerCondition * conditions);
        if (sharesSessions) {
            return Math.sqrt(2 * runVariance / againstSessions);
        }
        return Math.sqrt((sessionLogSd * sessionLogSd + runVariance) * (1.0 / baselineSessions + 1.0 / againstSessions));
    }

    /** Less than 1 where nothing is left to judge the noise by. */
    int degreesOfFreedom(int baselineSessions, int againstSessions, int trialsPerCondition) {
        if (sharesSessions) { // every trial of a level that is judged, less the sessions and the effects
            int left = trialsPerCondition * conditions * (levels.changes() + 1) * againstSessions - againstSessions;
            return left - levels.effects().applyAsInt(left);
        }
        return baselineSessions + levels.changes() * againstSessions - levels.changes() - 1;
    }

    double wattHours(int trialsPerCondition) {
        return cost.wattHoursOpening() + trialsPerSession(trialsPerCondition) * cost.wattHoursPerTrial();
    }

    boolean anyOutdoors() {
        return sharesSessions ? cost.against().get(0).outdoors() : cost.anyOutdoors();
    }

    /** Price of opening a session, outdoors counted by its weight, the way there included. */
    private double opening(SessionCost session) {
        return session.outdoors() ? session.openingSeconds() * cost.outdoorWeight() + cost.travelSecondsPerOuting()
                : session.openingSeconds();
    }

    private double trial(SessionCost session) {
        return cost.trialSeconds() * (session.outdoors() ? cost.outdoorWeight() : 1);
    }

    /** Trials in a session that cost least for continuous counts; the mean of the levels' costs where these differ. */
    double trialsOptimum() {
        SessionCost shared = cost.against().get(0);
        double opening = sharesSessions ? opening(shared) : (opening(cost.baseline()) + ofAllChanged(this::opening)) / (1 + cost.against().size());
        double trial = sharesSessions ? trial(shared) : (trial(cost.baseline()) + ofAllChanged(this::trial)) / (1 + cost.against().size());
        double noise = sharesSessions ? 0 : sessionLogSd;
        return noise == 0 ? Double.POSITIVE_INFINITY : Math.sqrt(opening / trial) * runLogSd / noise;
    }

    private double ofAllChanged(ToDoubleFunction<SessionCost> price) {
        return cost.against().stream().mapToDouble(price).sum();
    }

    /** Sessions of the baseline for one of each changed level, at the best number of trials (two where that has no end). */
    double ratioOptimum() {
        if (sharesSessions) {
            return 1;
        }
        double trials = trialsOptimum() == Double.POSITIVE_INFINITY ? 2 : Math.max(1, trialsOptimum());
        return Math.sqrt(ofAllChanged(session -> opening(session) + trials * trial(session))
                / (opening(cost.baseline()) + trials * trial(cost.baseline())));
    }
}
