package coldproof.stats.interval;

import coldproof.stats.Argument;
import coldproof.stats.distribution.StudentT;

/**
 * Fieller's interval for a ratio of two means {@code r = a / b}: all ratios that the t test of {@code a - r b} does not reject.
 *
 * <p>{@code g = (t s_b / b)^2}; the ends are {@code (r - g v_ab / v_bb -+ (t / b) sqrt(v_aa - 2 r v_ab + r^2 v_bb - g (v_aa - v_ab^2 / v_bb))) / (1 - g)}.
 * Where g is 1 or more the denominator cannot be told from 0 and no bounded interval exists.
 *
 * @param ratio of the means
 * @param g how near the denominator is to 0; the interval is bounded below 1
 * @param interval unbounded where {@code g >= 1}
 * @see "E. C. Fieller, Journal of the Royal Statistical Society B 16 (1954) 175-185 (from memory)"
 */
public record Fieller(double ratio, double g, ConfidenceInterval interval) {
    /**
     * The ratio of the means of two independent samples with one variance.
     *
     * @param numerator two or more values, finite
     * @param denominator two or more values, finite
     * @param level in (0, 1)
     * @throws IllegalArgumentException if a sample is too small, the denominator's mean is 0 or the level is out of range
     */
    public static Fieller ofGroups(double[] numerator, double[] denominator, double level) {
        Moments a = Moments.of(numerator);
        Moments b = Moments.of(denominator);
        int df = Argument.atLeast("values beyond one a sample", a.count() + b.count() - 2, 1);
        double variance = (a.sumOfSquares() + b.sumOfSquares()) / df;
        return of(a.mean(), b.mean(), variance / a.count(), variance / b.count(), 0, df, level);
    }

    /**
     * The ratio of the means of paired values.
     *
     * @param numerator two or more values, finite
     * @param denominator as many, the partner of each
     * @param level in (0, 1)
     * @throws IllegalArgumentException if lengths differ, there are too few pairs, the denominator's mean is 0 or the level is out of range
     */
    public static Fieller ofPairs(double[] numerator, double[] denominator, double level) {
        if (numerator.length != denominator.length) {
            throw new IllegalArgumentException(numerator.length + " and " + denominator.length + " values are no pairs");
        }
        Moments a = Moments.of(numerator);
        Moments b = Moments.of(denominator);
        int n = Argument.atLeast("pairs", a.count(), 2);
        double products = 0;
        for (int i = 0; i < n; i++) {
            products += (numerator[i] - a.mean()) * (denominator[i] - b.mean());
        }
        double scale = (n - 1.0) * n;
        return of(a.mean(), b.mean(), a.sumOfSquares() / scale, b.sumOfSquares() / scale, products / scale, n - 1, level);
    }

    /**
     * From estimates.
     *
     * @param a numerator
     * @param b denominator, not 0
     * @param varianceOfA of the estimate a, 0 or more
     * @param varianceOfB of the estimate b, 0 or more
     * @param covariance of the two estimates
     * @param degreesOfFreedom of the variances, above 0
     * @param level in (0, 1)
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static Fieller of(double a, double b, double varianceOfA, double varianceOfB, double covariance, double degreesOfFreedom, double level) {
        ConfidenceInterval.requireLevel(level);
        Argument.finite("numerator", a);
        Argument.positive("size of the denominator", Math.abs(b));
        double t = StudentT.upperPoint(0.5 * (1 - level), degreesOfFreedom);
        double ratio = a / b;
        double g = t * t * varianceOfB / (b * b);
        if (!(g < 1)) {
            return new Fieller(ratio, g, new ConfidenceInterval(level, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY));
        }
        double shared = varianceOfB == 0 ? 0 : covariance / varianceOfB;
        double inside = varianceOfA - 2 * ratio * covariance + ratio * ratio * varianceOfB - g * (varianceOfA - shared * covariance);
        double middle = ratio - g * shared;
        double reach = t / Math.abs(b) * Math.sqrt(Math.max(0, inside));
        return new Fieller(ratio, g, new ConfidenceInterval(level, (middle - reach) / (1 - g), (middle + reach) / (1 - g)));
    }
}
