package coldproof.stats.distribution;

import coldproof.stats.Argument;

/**
 * Owen's Q function from 0 to {@code R}.
 *
 * <pre>
 * Q(df, t, delta; 0, R) = sqrt(2 pi) / (Gamma(df/2) 2^((df-2)/2)) Int_0^R Phi(t x / sqrt(df) - delta) x^(df-1) phi(x) dx
 * </pre>
 *
 * The special bivariate noncentral t probability behind the exact power of two one-sided tests.
 *
 * @see "D. B. Owen, A special case of a bivariate non-central t-distribution, Biometrika 52 (1965) 437-446"
 */
public final class OwensQ {
    private OwensQ() {}

    /**
     * The value, in [0, 1]; tested to 1e-12 relative.
     *
     * @param degreesOfFreedom 1 or more, finite
     * @param t finite
     * @param delta finite
     * @param upperLimit the {@code R} of the formula, 0 or more, infinity allowed
     * @throws IllegalArgumentException if an argument is out of range or NaN
     */
    public static double value(double degreesOfFreedom, double t, double delta, double upperLimit) {
        Argument.within("degrees of freedom", degreesOfFreedom, 1, Double.MAX_VALUE);
        Argument.finite("t", t);
        Argument.finite("delta", delta);
        Argument.within("upper limit", upperLimit, 0, Double.POSITIVE_INFINITY);
        if (upperLimit == 0) {
            return 0;
        }
        double end = upperLimit / Math.sqrt(degreesOfFreedom);
        return new NormalStep(t, delta).average(new ChiMixture(degreesOfFreedom), end);
    }

    /**
     * Probability that two t statistics with the same numerator noise and the same denominator lie beyond {@code t} and below {@code -t}:
     * both one-sided tests of equivalence succeed. It equals {@code Q(df, -t, high; 0, R) - Q(df, t, low; 0, R)} with
     * {@code R = (low - high) sqrt(df) / (2 t)}, but is integrated as one positive function, so that a small power keeps its digits.
     *
     * @param degreesOfFreedom 1 or more, infinity allowed
     * @param t critical value above 0, finite
     * @param low noncentrality of the test against the lower margin, {@code (effect - low margin) / standard error}, finite
     * @param high noncentrality of the test against the upper margin, {@code (effect - high margin) / standard error}, finite
     * @throws IllegalArgumentException if an argument is out of range or NaN
     * @see "K. F. Phillips, Journal of Pharmacokinetics and Biopharmaceutics 18 (1990) 137-144 (from memory)"
     */
    public static double bothTests(double degreesOfFreedom, double t, double low, double high) {
        Argument.within("degrees of freedom", degreesOfFreedom, 1, Double.POSITIVE_INFINITY);
        Argument.positive("t", t);
        Argument.finite("low", low);
        Argument.finite("high", high);
        double end = (low - high) / (2 * t);
        if (end <= 0) {
            return 0; // the margins are closer than the tests can tell apart
        }
        Corridor corridor = new Corridor(t, low, high);
        if (degreesOfFreedom == Double.POSITIVE_INFINITY) {
            return end > 1 ? corridor.at(1) : 0;
        }
        double left = Math.min(low, -high) / t;
        double right = Math.max(low, -high) / t;
        return new ChiMixture(degreesOfFreedom).average(corridor, end, t, left, right);
    }

    /** Probability of a normal estimate between the two critical values, which close in as {@code s} grows. */
    private record Corridor(double t, double low, double high) implements ChiMixture.Kernel {
        @Override
        public double at(double s) {
            double upper = -high - t * s;
            double lower = t * s - low;
            if (upper <= lower) {
                return 0;
            }
            return lower > 0 ? Normal.lower(-lower) - Normal.lower(-upper) : Normal.lower(upper) - Normal.lower(lower);
        }

        @Override
        public double logSlope(double s) {
            double inside = at(s);
            double density = Normal.density(-high - t * s) + Normal.density(t * s - low);
            return inside > 0 ? -t * density / inside : Double.NEGATIVE_INFINITY;
        }
    }
}
