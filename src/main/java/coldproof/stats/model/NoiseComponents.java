package coldproof.stats.model;

import coldproof.stats.DotProduct;
import coldproof.stats.interval.ConfidenceInterval;
import java.util.List;

/**
 * Run-to-run and session-to-session noise of log scores, kept as the two mean squares they are estimated from.
 *
 * <p>{@code E(runMeanSquare) = v_run} and {@code E(sessionMeanSquare) = v_run + n v_session}, n the effective number of trials in a session. The
 * estimator of the session variance, {@code (sessionMeanSquare - runMeanSquare) / n}, is the nested analysis of variance; with unequal
 * sessions or fixed effects it is Henderson's third method. Where it is negative it is reported as 0 and {@link #isSessionVarianceNegative} says so.
 *
 * @param runMeanSquare mean square within sessions, above 0
 * @param runDegreesOfFreedom of it, 1 or more
 * @param sessionMeanSquare mean square between sessions, 0 or more
 * @param sessionDegreesOfFreedom of it; 0 where every condition had a single session, so that nothing is known of session noise
 * @param trialsPerSession effective number of trials in a session, above 0
 * @see "C. R. Henderson, Biometrics 9 (1953) 226-252; R. K. Burdick, F. A. Graybill, Confidence Intervals on Variance Components (1992) (intervals)"
 */
public record NoiseComponents(double runMeanSquare, int runDegreesOfFreedom, double sessionMeanSquare, int sessionDegreesOfFreedom,
        double trialsPerSession) {
    /** Checks the ranges. */
    public NoiseComponents {
        if (!(runMeanSquare > 0 && runMeanSquare < Double.POSITIVE_INFINITY) || runDegreesOfFreedom < 1) {
            throw new IllegalArgumentException("run mean square " + runMeanSquare + " on " + runDegreesOfFreedom + " df is not above 0 on 1 or more");
        }
        if (!(sessionMeanSquare >= 0 && sessionMeanSquare < Double.POSITIVE_INFINITY) || sessionDegreesOfFreedom < 0) {
            throw new IllegalArgumentException("session mean square " + sessionMeanSquare + " on " + sessionDegreesOfFreedom + " df");
        }
        if (!(trialsPerSession > 0)) {
            throw new IllegalArgumentException("trialsPerSession " + trialsPerSession + " is not above 0");
        }
    }

    /**
     * Estimates the noise that is left when fixed effects (the conditions) are taken out.
     *
     * @param logScores finite
     * @param effects fixed effects, a row for each score; {@link DesignMatrix#intercept} for a pilot of baseline runs
     * @param session index of the session of each trial, in [0, trials)
     * @throws IllegalArgumentException if lengths differ, a score is not finite, or no session has a second trial to show run-to-run noise
     */
    public static NoiseComponents of(double[] logScores, DesignMatrix effects, int[] session) {
        if (logScores.length != effects.rows()) {
            throw new IllegalArgumentException(logScores.length + " scores for " + effects.rows() + " rows of effects");
        }
        double[] residual = logScores.clone();
        for (double score : residual) {
            if (!Double.isFinite(score)) {
                throw new IllegalArgumentException("score " + score + " is not finite");
            }
        }
        OrthonormalColumns q = new OrthonormalColumns(effects.copyOfColumns(), effects::columnName);
        q.sweep(residual);
        NestedBlocks data = new NestedBlocks(q, residual, session, null);
        ErrorDegrees degrees = ErrorDegrees.of(data);
        if (degrees.runs() < 1) {
            throw new IllegalArgumentException("no session has a second trial of its condition: run-to-run noise cannot be seen");
        }
        double runSquares = degrees.runSquares();
        double sessionSquares = Math.max(0, DotProduct.of(residual, residual) - runSquares);
        double coefficient = 0;
        for (int i = 0; i < data.sessions; i++) {
            double explained = 0;
            for (int j = 0; j < data.columns; j++) {
                explained += data.mean[i][j] * data.mean[i][j];
            }
            coefficient += data.size[i] - data.size[i] * data.size[i] * explained;
        }
        int between = degrees.sessions();
        return between < 1 ? new NoiseComponents(runSquares / degrees.runs(), degrees.runs(), 0, 0, (double) data.trials / data.sessions)
                : new NoiseComponents(runSquares / degrees.runs(), degrees.runs(), sessionSquares / between, between, coefficient / between);
    }

    /**
     * Pools several pilots or studies of the same device and workload: sums of squares and degrees of freedom add.
     *
     * @param parts one or more
     * @throws IllegalArgumentException if there is none
     */
    public static NoiseComponents pooled(List<NoiseComponents> parts) {
        if (parts.isEmpty()) {
            throw new IllegalArgumentException("no noise to pool");
        }
        double runSquares = 0;
        double sessionSquares = 0;
        double trials = 0;
        double trialsWithoutSessions = 0;
        int runs = 0;
        int sessions = 0;
        for (NoiseComponents part : parts) {
            runSquares += part.runMeanSquare * part.runDegreesOfFreedom;
            runs += part.runDegreesOfFreedom;
            sessionSquares += part.sessionMeanSquare * part.sessionDegreesOfFreedom;
            sessions += part.sessionDegreesOfFreedom;
            trials += part.trialsPerSession * part.sessionDegreesOfFreedom;
            trialsWithoutSessions += part.trialsPerSession / parts.size();
        }
        return new NoiseComponents(runSquares / runs, runs, sessions == 0 ? 0 : sessionSquares / sessions, sessions,
                sessions == 0 ? trialsWithoutSessions : trials / sessions);
    }

    /** Run-to-run log standard deviation. */
    public double runLogSd() {
        return Math.sqrt(runMeanSquare);
    }

    /** Session-to-session variance as estimated; may be negative. */
    public double sessionVarianceUnclamped() {
        requireSessions();
        return (sessionMeanSquare - runMeanSquare) / trialsPerSession;
    }

    /** Whether the estimate of the session variance is below 0, and therefore reported as 0. */
    public boolean isSessionVarianceNegative() {
        return sessionDegreesOfFreedom > 0 && sessionMeanSquare < runMeanSquare;
    }

    /** Whether anything is known of session-to-session noise. */
    public boolean knowsSessions() {
        return sessionDegreesOfFreedom > 0;
    }

    /** Session-to-session log standard deviation, 0 where its square is estimated as negative. */
    public double sessionLogSd() {
        return Math.sqrt(Math.max(0, sessionVarianceUnclamped()));
    }

    /**
     * Variance of the mean of one session, {@code v_session + v_run / trials}, with Satterthwaite's degrees of freedom from the mean squares. Where
     * the session variance is estimated as 0 the degrees of freedom stay those between sessions: the plan's, not the data's.
     *
     * @param trials in the session, above 0; need not be whole
     * @throws IllegalArgumentException if nothing is known of sessions or {@code trials} is not above 0
     */
    public VarianceEstimate ofSessionMean(double trials) {
        requireSessions();
        if (!(trials > 0 && trials < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("trials " + trials + " is not above 0 and finite");
        }
        if (sessionMeanSquare <= runMeanSquare) {
            return new VarianceEstimate(runMeanSquare / trials, sessionDegreesOfFreedom);
        }
        double ofSessions = sessionMeanSquare / trialsPerSession;
        double ofRuns = runMeanSquare * (1 / trials - 1 / trialsPerSession);
        double variance = ofSessions + ofRuns;
        double df = variance * variance / (ofSessions * ofSessions / sessionDegreesOfFreedom + ofRuns * ofRuns / runDegreesOfFreedom);
        return new VarianceEstimate(variance, df);
    }

    /**
     * Interval of the run-to-run log standard deviation, from the chi-square distribution; exact for normal log scores.
     *
     * @param level in (0, 1)
     */
    public ConfidenceInterval runLogSdInterval(double level) {
        ConfidenceInterval.requireLevel(level);
        double squares = runMeanSquare * runDegreesOfFreedom;
        return new ConfidenceInterval(level, Math.sqrt(squares / Central.chiSquarePoint((1 + level) / 2, runDegreesOfFreedom)),
                Math.sqrt(squares / Central.chiSquarePoint((1 - level) / 2, runDegreesOfFreedom)));
    }

    /**
     * Interval of the session-to-session log standard deviation by the modified large-sample method; negative bounds become 0. Its lower
     * end is 0 exactly when the F test of sessions at half the error does not reject. Close to nominal for equal sessions.
     *
     * @param level in (0, 1)
     * @throws IllegalArgumentException if nothing is known of sessions
     * @see "N. Ting, R. K. Burdick, F. A. Graybill, S. Jeyaratnam, T.-F. C. Lu, J. Statist. Comput. Simul. 35 (1990) 135-143"
     */
    public ConfidenceInterval sessionLogSdInterval(double level) {
        ConfidenceInterval.requireLevel(level);
        requireSessions();
        double tail = (1 - level) / 2;
        int n1 = sessionDegreesOfFreedom;
        int n2 = runDegreesOfFreedom;
        double g1 = 1 - n1 / Central.chiSquarePoint(1 - tail, n1);
        double g2 = 1 - n2 / Central.chiSquarePoint(1 - tail, n2);
        double h1 = n1 / Central.chiSquarePoint(tail, n1) - 1;
        double h2 = n2 / Central.chiSquarePoint(tail, n2) - 1;
        double upperF = Central.fUpperPoint(tail, n1, n2);
        double lowerF = 1 / Central.fUpperPoint(tail, n2, n1);
        double g12 = (square(upperF - 1) - square(g1 * upperF) - h2 * h2) / upperF;
        double h12 = (square(1 - lowerF) - square(h1 * lowerF) - g2 * g2) / lowerF;
        double s = sessionMeanSquare;
        double r = runMeanSquare;
        double below = Math.max(0, square(g1 * s) + square(h2 * r) + g12 * s * r);
        double above = Math.max(0, square(h1 * s) + square(g2 * r) + h12 * s * r);
        double low = Math.max(0, s - r - Math.sqrt(below)) / trialsPerSession;
        double high = Math.max(0, s - r + Math.sqrt(above)) / trialsPerSession;
        return new ConfidenceInterval(level, Math.sqrt(low), Math.sqrt(high));
    }

    private static double square(double x) {
        return x * x;
    }

    private void requireSessions() {
        if (sessionDegreesOfFreedom < 1) {
            throw new IllegalArgumentException("every condition had a single session: nothing is known of session-to-session noise");
        }
    }
}
