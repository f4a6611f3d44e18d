package coldproof.stats.model;

import coldproof.stats.DotProduct;
import java.util.ArrayList;
import java.util.List;

/**
 * Least squares within sessions: every session has a level of its own, so that whatever is common to its trials drops out. The test for a
 * factor that is set per trial; degrees of freedom are trials minus sessions minus the effects that vary within sessions.
 */
public final class WithinSessions {
    private static final double CONSTANT = 1e-9; // share of a column's length left within sessions below which it does not vary there

    private WithinSessions() {}

    /**
     * Tests a contrast of effects that vary within sessions.
     *
     * @param logScores finite
     * @param effects fixed effects, a row for each score; those constant within sessions drop out
     * @param session index of the session of each trial, in [0, trials)
     * @param contrast a coefficient for each column of the effects
     * @throws IllegalArgumentException if lengths differ, the contrast uses an effect that cannot be seen within sessions, effects are aliased
     *     within sessions, or no degrees of freedom are left
     */
    public static Estimate test(double[] logScores, DesignMatrix effects, int[] session, double[] contrast) {
        if (effects.rows() != logScores.length) {
            throw new IllegalArgumentException(logScores.length + " scores, " + effects.rows() + " rows of effects");
        }
        return prepare(effects, session, contrast).test(logScores);
    }

    /**
     * Tests several contrasts of one fit.
     *
     * @param contrasts each with a coefficient for each column of the effects; one or more
     * @throws IllegalArgumentException as {@link #test}
     */
    public static JointEstimates tests(double[] logScores, DesignMatrix effects, int[] session, List<double[]> contrasts) {
        List<Prepared> prepared = contrasts.stream().map(contrast -> prepare(effects, session, contrast)).toList();
        double[][] correlations = prepared.stream().map(one -> prepared.stream().mapToDouble(one::correlation).toArray()).toArray(double[][]::new);
        return new JointEstimates(prepared.stream().map(one -> one.test(logScores)).toList(), correlations);
    }

    /**
     * The same test made ready for many sets of scores of one arrangement.
     *
     * @throws IllegalArgumentException as for {@link #test}
     */
    public static Prepared prepare(DesignMatrix effects, int[] session, double[] contrast) {
        int trials = effects.rows();
        if (session.length != trials) {
            throw new IllegalArgumentException(trials + " rows of effects, " + session.length + " sessions");
        }
        if (contrast.length != effects.columns()) {
            throw new IllegalArgumentException("a contrast of " + contrast.length + " entries for " + effects.columns() + " columns");
        }
        int sessions = requireIndices(session);
        double[][] columns = effects.copyOfColumns();
        List<Integer> kept = new ArrayList<>();
        for (int j = 0; j < columns.length; j++) {
            double length = DotProduct.of(columns[j], columns[j]);
            centre(columns[j], session);
            if (DotProduct.of(columns[j], columns[j]) > CONSTANT * CONSTANT * length) {
                kept.add(j);
            } else if (contrast[j] != 0) {
                throw new IllegalArgumentException(effects.columnName(j) + " does not vary within sessions: test it between them");
            }
        }
        OrthonormalColumns q = new OrthonormalColumns(kept.stream().map(j -> columns[j]).toArray(double[][]::new),
                j -> effects.columnName(kept.get(j)));
        int df = trials - sessions - kept.size();
        if (df < 1) {
            throw new IllegalArgumentException("no degrees of freedom are left within sessions: " + trials + " trials, " + sessions
                    + " sessions, " + kept.size() + " effects");
        }
        return new Prepared(q, q.contrastInCoordinates(kept.stream().mapToDouble(j -> contrast[j]).toArray()), session.clone(), df);
    }

    /** A contrast in one arrangement of trials, ready for any scores. Immutable. */
    public static final class Prepared {
        private final OrthonormalColumns columns;
        private final double[] contrast;
        private final int[] session;
        private final int degreesOfFreedom;
        private final double length;

        private Prepared(OrthonormalColumns columns, double[] contrast, int[] session, int degreesOfFreedom) {
            this.columns = columns;
            this.contrast = contrast;
            this.session = session;
            this.degreesOfFreedom = degreesOfFreedom;
            this.length = DotProduct.of(contrast, contrast);
        }

        /** Degrees of freedom left for the noise. */
        public int degreesOfFreedom() {
            return degreesOfFreedom;
        }

        private double correlation(Prepared other) {
            return DotProduct.of(contrast, other.contrast) / Math.sqrt(length * other.length);
        }

        /**
         * Tests the contrast on these scores.
         *
         * @param logScores finite, one for each trial
         * @throws IllegalArgumentException if there are more or fewer scores than trials, or one is not finite
         */
        public Estimate test(double[] logScores) {
            if (logScores.length != session.length) {
                throw new IllegalArgumentException(logScores.length + " scores for " + session.length + " trials");
            }
            double[] residual = logScores.clone();
            centre(residual, session);
            double[] coordinates = columns.sweep(residual);
            double variance = DotProduct.of(residual, residual) / degreesOfFreedom;
            return Estimate.of(DotProduct.of(contrast, coordinates), Math.sqrt(variance * length), degreesOfFreedom);
        }
    }

    private static int requireIndices(int[] session) {
        boolean[] used = new boolean[session.length];
        int sessions = 0;
        for (int each : session) {
            if (each < 0 || each >= session.length) {
                throw new IllegalArgumentException("session index " + each + " is outside [0, " + session.length + ")");
            }
            sessions += used[each] ? 0 : 1;
            used[each] = true;
        }
        return sessions;
    }

    private static void centre(double[] values, int[] session) {
        double[] sum = new double[values.length];
        int[] count = new int[values.length];
        for (int i = 0; i < values.length; i++) {
            if (!Double.isFinite(values[i])) {
                throw new IllegalArgumentException("score or effect " + values[i] + " is not finite");
            }
            sum[session[i]] += values[i];
            count[session[i]]++;
        }
        for (int i = 0; i < values.length; i++) {
            values[i] -= sum[session[i]] / count[session[i]];
        }
    }
}
