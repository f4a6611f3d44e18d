package coldproof.stats.distribution;

import coldproof.stats.Argument;

/**
 * The F distribution with any positive degrees of freedom, whole or not, as Satterthwaite's and Kenward and Roger's methods need.
 *
 * <p>{@code P(F > x) = I_{df2 / (df2 + df1 x)}(df2 / 2, df1 / 2)} (M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions, 26.6.2).
 */
public final class CentralF {
    private CentralF() {}

    /**
     * Probability of a value at or below {@code x}.
     *
     * @param x any number; 0 or less has probability 0
     * @param numerator degrees of freedom above 0, finite
     * @param denominator degrees of freedom above 0, finite
     * @throws IllegalArgumentException if an argument is out of range or NaN
     */
    public static double cdf(double x, double numerator, double denominator) {
        check(x, numerator, denominator);
        return NoncentralF.lower(x, numerator, denominator, 0);
    }

    /**
     * Probability of a value above {@code x}: the p value of an F statistic.
     *
     * @param x any number; 0 or less has probability 1
     * @param numerator degrees of freedom above 0, finite
     * @param denominator degrees of freedom above 0, finite
     * @throws IllegalArgumentException if an argument is out of range or NaN
     */
    public static double survival(double x, double numerator, double denominator) {
        check(x, numerator, denominator);
        return NoncentralF.upper(x, numerator, denominator, 0);
    }

    /**
     * The point with probability {@code p} below it.
     *
     * @param p probability in [0, 1]
     * @param numerator degrees of freedom above 0, finite
     * @param denominator degrees of freedom above 0, finite
     * @throws IllegalArgumentException if an argument is out of range or NaN
     */
    public static double quantile(double p, double numerator, double denominator) {
        return NoncentralF.quantile(p, numerator, denominator, 0);
    }

    private static void check(double x, double numerator, double denominator) {
        Argument.number("x", x);
        Argument.positive("numerator degrees of freedom", numerator);
        Argument.positive("denominator degrees of freedom", denominator);
    }
}
