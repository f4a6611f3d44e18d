package coldproof.stats.series;

import coldproof.stats.Argument;
import coldproof.stats.interval.Moments;

/**
 * How much neighbouring values resemble each other: {@code r1 = sum (x_i - m)(x_(i+1) - m) / sum (x_i - m)^2}, and how many independent values the
 * series is worth if that is first-order autocorrelation.
 *
 * @param lagOne r1, in (-1, 1)
 * @param effectiveSize the number of independent values whose mean is as uncertain, {@code n / (1 + 2 sum over k < n of (1 - k/n) r1^k)}; not above n
 * @see "A. M. Law, Simulation Modeling and Analysis, ch. 4 (from memory)"
 */
public record Autocorrelation(double lagOne, double effectiveSize) {
    /**
     * Measures a series.
     *
     * @param values in order, 3 or more, finite, not all equal
     * @throws IllegalArgumentException if there are fewer, one is not finite or all are equal
     */
    public static Autocorrelation of(double[] values) {
        int n = Argument.atLeast("number of values", values.length, 3);
        Moments moments = Moments.of(values);
        Argument.positive("sum of squares", moments.sumOfSquares());
        double products = 0;
        for (int i = 1; i < n; i++) {
            products += (values[i - 1] - moments.mean()) * (values[i] - moments.mean());
        }
        double lagOne = products / moments.sumOfSquares();
        return new Autocorrelation(lagOne, effectiveSize(n, lagOne));
    }

    /**
     * The number of independent values that so many autocorrelated ones are worth for their mean; not above their number.
     *
     * @param count how many, 1 or more
     * @param lagOne autocorrelation of neighbours, in (-1, 1)
     */
    public static double effectiveSize(int count, double lagOne) {
        Argument.atLeast("count", count, 1);
        Argument.between("autocorrelation", lagOne, -1, 1);
        double sum = 0;
        double power = 1;
        for (int k = 1; k < count; k++) {
            power *= lagOne;
            sum += (1 - (double) k / count) * power;
        }
        return Math.min(count, count / (1 + 2 * sum));
    }
}
