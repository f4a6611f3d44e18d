package coldproof.stats.model;

import coldproof.stats.interval.ConfidenceInterval;

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

    /**
     * Interval of the true standard deviation, from the chi-square distribution.
     *
     * @param level in (0, 1)
     */
    public ConfidenceInterval logSdInterval(double level) {
        ConfidenceInterval.requireLevel(level);
        double squares = variance * degreesOfFreedom;
        return new ConfidenceInterval(level, Math.sqrt(squares / Central.chiSquarePoint((1 + level) / 2, degreesOfFreedom)),
                Math.sqrt(squares / Central.chiSquarePoint((1 - level) / 2, degreesOfFreedom)));
    }
}
