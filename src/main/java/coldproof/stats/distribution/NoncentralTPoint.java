package coldproof.stats.distribution;

import java.util.function.DoubleUnaryOperator;

/** Points of the noncentral t distribution by bracketing and interpolation on the logarithm of the smaller tail. */
final class NoncentralTPoint {
    private NoncentralTPoint() {}

    static double of(double p, double df, double noncentrality) {
        if (p == 0) {
            return Double.NEGATIVE_INFINITY;
        }
        if (p == 1) {
            return Double.POSITIVE_INFINITY;
        }
        if (df == Double.POSITIVE_INFINITY) {
            return noncentrality + Normal.quantile(p);
        }
        boolean below = p <= 0.5;
        double logTail = Math.log(below ? p : 1 - p);
        DoubleUnaryOperator rising = below
                ? t -> logOf(NoncentralT.lower(t, df, noncentrality)) - logTail
                : t -> logTail - logOf(NoncentralT.lower(-t, df, -noncentrality));
        double guess = StudentT.quantile(p, df) + noncentrality;
        return Root.ofRising(rising, guess, 1 + 0.1 * Math.abs(guess));
    }

    /** A tail that has underflowed counts as very small, so that interpolation stays finite. */
    private static double logOf(double tail) {
        return tail > 0 ? Math.log(tail) : -1000;
    }
}
