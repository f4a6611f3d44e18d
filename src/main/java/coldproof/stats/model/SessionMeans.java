package coldproof.stats.model;

import coldproof.stats.interval.Moments;

/**
 * One number for each session, so that a factor set once a session is tested against the spread of sessions: the exact test where sessions are
 * alike, and one that never claims more degrees of freedom than there are sessions.
 *
 * @param baseline mean log score of each session under the baseline
 * @param against mean log score of each session under the other level
 * @param trialsPerBaselineSession harmonic mean of the trials in a baseline session; 0 where there is no session
 * @param trialsPerAgainstSession the same for the other level
 */
public record SessionMeans(double[] baseline, double[] against, double trialsPerBaselineSession, double trialsPerAgainstSession) {
    /** Copies the arrays in. */
    public SessionMeans {
        baseline = baseline.clone();
        against = against.clone();
    }

    /** A copy. */
    @Override
    public double[] baseline() {
        return baseline.clone();
    }

    /** A copy. */
    @Override
    public double[] against() {
        return against.clone();
    }

    /**
     * Averages every session's trials.
     *
     * @param logScores finite
     * @param session index of the session of each trial, in [0, trials)
     * @param isAgainst whether the trial's session is under the other level
     * @throws IllegalArgumentException if lengths differ, a session has both levels or a score is not finite
     */
    public static SessionMeans of(double[] logScores, int[] session, boolean[] isAgainst) {
        return of(logScores, session, isAgainst, new int[logScores.length]);
    }

    /**
     * Averages every session's cells (levels of the other factors) with equal weight, however many trials each has.
     *
     * @param cell index of the cell of each trial, in [0, trials)
     * @throws IllegalArgumentException as for {@link #of(double[], int[], boolean[])}, or if a session lacks a cell that another has
     */
    public static SessionMeans of(double[] logScores, int[] session, boolean[] isAgainst, int[] cell) {
        int trials = logScores.length;
        if (session.length != trials || isAgainst.length != trials || cell.length != trials) {
            throw new IllegalArgumentException("scores, sessions, levels and cells differ in number: " + trials + ", " + session.length + ", "
                    + isAgainst.length + ", " + cell.length);
        }
        int sessions = 1 + largest(session, trials);
        int cells = 1 + largest(cell, trials);
        double[][] sum = new double[sessions][cells];
        int[][] count = new int[sessions][cells];
        int[] level = new int[sessions];
        boolean[] cellUsed = new boolean[cells];
        for (int i = 0; i < trials; i++) {
            if (!Double.isFinite(logScores[i])) {
                throw new IllegalArgumentException("score " + logScores[i] + " is not finite");
            }
            int code = isAgainst[i] ? 2 : 1;
            if (level[session[i]] != 0 && level[session[i]] != code) {
                throw new IllegalArgumentException("session " + session[i] + " has trials of both levels: the factor is not set per session");
            }
            level[session[i]] = code;
            sum[session[i]][cell[i]] += logScores[i];
            count[session[i]][cell[i]]++;
            cellUsed[cell[i]] = true;
        }
        return collect(sum, count, level, cellUsed);
    }

    private static SessionMeans collect(double[][] sum, int[][] count, int[] level, boolean[] cellUsed) {
        int[] sessions = new int[3];
        for (int each : level) {
            sessions[each]++;
        }
        double[][] means = {null, new double[sessions[1]], new double[sessions[2]]};
        double[] inverseTrials = new double[3];
        int[] next = new int[3];
        for (int s = 0; s < level.length; s++) {
            if (level[s] == 0) {
                continue;
            }
            double mean = 0;
            double inverse = 0;
            int cells = 0;
            for (int c = 0; c < cellUsed.length; c++) {
                if (!cellUsed[c]) {
                    continue;
                }
                if (count[s][c] == 0) {
                    throw new IllegalArgumentException("session " + s + " lacks cell " + c + ": its mean would favour the others");
                }
                mean += sum[s][c] / count[s][c];
                inverse += 1.0 / count[s][c];
                cells++;
            }
            means[level[s]][next[level[s]]++] = mean / cells;
            inverseTrials[level[s]] += inverse / (cells * (double) cells);
        }
        return new SessionMeans(means[1], means[2], sessions[1] == 0 ? 0 : sessions[1] / inverseTrials[1],
                sessions[2] == 0 ? 0 : sessions[2] / inverseTrials[2]);
    }

    private static int largest(int[] index, int trials) {
        int largest = -1;
        for (int each : index) {
            if (each < 0 || each >= trials) {
                throw new IllegalArgumentException("index " + each + " is outside [0, " + trials + ")");
            }
            largest = Math.max(largest, each);
        }
        return largest;
    }

    /** Student's t test with a common variance; see {@link TwoGroups#pooled}. */
    public Estimate pooled() {
        return TwoGroups.pooled(baseline, against);
    }

    /** Mean of the sessions of the other level minus that of the baseline's, log; each has one session or more. */
    public double difference() {
        return Moments.of(against).mean() - Moments.of(baseline).mean();
    }

    /** Welch's t test with a variance for each level; see {@link TwoGroups#welch}. */
    public Estimate welch() {
        return TwoGroups.welch(baseline, against);
    }
}
