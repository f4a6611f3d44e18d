package coldproof.reason.noise;

/**
 * One trial as the noise sees it.
 *
 * @param condition everything that was set, as one word; trials of the same condition are replicates
 * @param session its session; trials outside sessions share one
 * @param score the metric, above 0
 */
public record NoiseTrial(String condition, String session, double score) {
    /** Refuses a score without a logarithm. */
    public NoiseTrial {
        if (!(score > 0 && score < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("a score must be above 0 and finite, not " + score);
        }
    }
}
