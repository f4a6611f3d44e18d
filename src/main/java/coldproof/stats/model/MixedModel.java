package coldproof.stats.model;

import java.util.Objects;

/**
 * Linear mixed model with a random intercept for each session, and optionally one for each block that holds whole sessions (a day with its
 * pair of sessions, say), fitted by restricted maximum likelihood:
 *
 * <pre>  score = X b + block + session + run,   block ~ N(0, v_block), session ~ N(0, v_session), run ~ N(0, v_run)</pre>
 *
 * <p>Any number of trials in a session, any fixed effects. The likelihood is profiled down to the variance ratios and its derivatives are
 * set to zero to rounding; all sums are linear in the number of trials. To put pairs of trials inside sessions, hand the pairs in as
 * sessions and the sessions as blocks. Crossed random effects are not covered.
 *
 * @see "H. D. Patterson, R. Thompson, Biometrika 58 (1971) 545-554 (restricted likelihood)"
 */
public final class MixedModel {
    private MixedModel() {}

    /**
     * Fits the model with a session intercept.
     *
     * @param scores log scores, finite
     * @param effects fixed effects, a row for each score
     * @param session index of the session of each trial, in [0, trials)
     * @throws IllegalArgumentException if lengths differ, a score is not finite, effects are aliased, no degrees of freedom are left between
     *     or within sessions, or the scores do not vary within sessions
     */
    public static MixedModelFit fit(double[] scores, DesignMatrix effects, int[] session) {
        return fitNested(scores, effects, session, null);
    }

    /**
     * Fits the model with an intercept for each session and for each block of sessions.
     *
     * @param block index of the block of each trial, in [0, trials); all trials of a session are in one block
     * @throws IllegalArgumentException as for {@link #fit(double[], DesignMatrix, int[])}, or if a session lies in two blocks or no degrees of
     *     freedom are left between blocks
     */
    public static MixedModelFit fit(double[] scores, DesignMatrix effects, int[] session, int[] block) {
        return fitNested(scores, effects, session, Objects.requireNonNull(block, "block"));
    }

    private static MixedModelFit fitNested(double[] scores, DesignMatrix effects, int[] session, int[] block) {
        if (scores.length != effects.rows()) {
            throw new IllegalArgumentException(scores.length + " scores for " + effects.rows() + " rows of effects");
        }
        double largest = 0;
        double[] residual = scores.clone();
        for (double score : residual) {
            if (!Double.isFinite(score)) {
                throw new IllegalArgumentException("score " + score + " is not finite");
            }
            largest = Math.max(largest, Math.abs(score));
        }
        OrthonormalColumns q = new OrthonormalColumns(effects.copyOfColumns(), effects::columnName);
        double[] ordinary = q.sweep(residual);
        NestedBlocks data = new NestedBlocks(q, residual, session, block);
        ErrorDegrees degrees = ErrorDegrees.of(data);
        degrees.requireEnough(largest);
        ProfilePoint best = RestrictedLikelihood.maximise(data);
        return new MixedModelFit(q, ordinary, data, best, degrees);
    }
}
