package coldproof.quantity;

/**
 * A ratio of two scores, kept as its natural logarithm; percent only at the edges. +3 % is {@code log(1.03)}. Chains add, and the way
 * back from +3 % is exactly -1 times it.
 *
 * @param log natural logarithm of the ratio, finite
 */
public record LogRatio(double log) {
    /** No change. */
    public static final LogRatio NONE = new LogRatio(0);

    /** Refuses NaN and infinity. */
    public LogRatio {
        if (!Double.isFinite(log)) {
            throw new IllegalArgumentException("a log ratio must be finite, not " + log);
        }
    }

    /**
     * The ratio of a percent change.
     *
     * @param percent change in percent, above -100
     * @throws IllegalArgumentException if the change is -100 % or less, or NaN
     */
    public static LogRatio ofPercent(double percent) {
        if (!(percent > -100 && percent < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("a change of " + percent + " % has no ratio: it must be above -100 %");
        }
        return new LogRatio(Math.log1p(percent / 100));
    }

    /** The change in percent: {@code 100 (exp(log) - 1)}. */
    public double percent() {
        return toPercent(log);
    }

    /** Percent change of a log difference: {@code 100 (exp(log) - 1)}. */
    public static double toPercent(double log) {
        return 100 * Math.expm1(log);
    }

    /**
     * Standard deviation of the log score for a coefficient of variation: {@code sqrt(ln(1 + cv^2))}, exact for log-normal scores.
     *
     * @param cvPercent coefficient of variation in percent, 0 or more
     */
    public static double logSdOfCv(double cvPercent) {
        if (!(cvPercent >= 0 && cvPercent < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("a coefficient of variation must be 0 % or more, not " + cvPercent + " %");
        }
        double cv = cvPercent / 100;
        return Math.sqrt(Math.log1p(cv * cv));
    }

    /** The way back: coefficient of variation in percent of a log standard deviation, {@code 100 sqrt(exp(sd^2) - 1)}. */
    public static double cvPercentOfLogSd(double logSd) {
        return 100 * Math.sqrt(Math.expm1(logSd * logSd));
    }
}
