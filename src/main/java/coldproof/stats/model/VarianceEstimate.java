package coldproof.stats.model;

/**
 * An estimated variance of log scores and how well it is known.
 *
 * @param variance 0 or more, no unit
 * @param degreesOfFreedom above 0; need not be whole
 */
public record VarianceEstimate(double variance, double degreesOfFreedom) {
    /** Refuses what is no variance. */
    public VarianceEstimate {
        if (!(variance >= 0 && variance < Double.POSITIVE_INFINITY) || !(degreesOfFreedom > 0)) {
            throw new IllegalArgumentException("variance " + variance + " with " + degreesOfFreedom + " degrees of freedom");
        }
    }

    /** The log standard deviation. */
    public double logSd() {
        return Math.sqrt(variance);
    }
}
