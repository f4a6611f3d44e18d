package coldproof.reason.sizing;

/**
 * One way to hold the study, with what it can tell and what it takes.
 *
 * @param baselineSessions sessions of the baseline
 * @param againstSessions sessions of the changed level; where every session has both levels, the same sessions
 * @param trialsPerCondition trials of one condition in one session
 * @param power probability of deciding, in [0, 1]
 * @param standardErrorLog standard error of the log change
 * @param degreesOfFreedom of that standard error
 * @param trials trials in all
 * @param totalSeconds time in all, travel included, s
 * @param outdoorsSeconds time outdoors, travel left out, s
 * @param outings how often the person goes out
 * @param weightedSeconds what is made least: time in all, with seconds outdoors counted by their weight
 */
public record PlannedStudy(int baselineSessions, int againstSessions, int trialsPerCondition, double power, double standardErrorLog,
        int degreesOfFreedom, int trials, double totalSeconds, double outdoorsSeconds, int outings, double weightedSeconds) {}
