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
}
