package coldproof.stats.distribution;

/**
 * The regularised incomplete beta function with a tail on each side, each to about 1e-14 relative.
 *
 * <p>Continued fraction of A. R. DiDonato and A. H. Morris, "Significant digit computation of the incomplete beta function ratios", ACM
 * Transactions on Mathematical Software 18 (1992) 360-373, equation 9 (from memory, checked against other programs); the factor in front
 * of it is taken around its maximum, so that large parameters lose no digits.
 */
final class IncompleteBeta {
    private static final int MOST_TERMS = 100_000;

    private IncompleteBeta() {}

    /** {@code I_x(a, b)}; {@code y = 1 - x} is given apart, because near 1 it cannot be had from {@code x}. */
    static double lower(double a, double b, double x, double y) {
        if (x <= 0) {
            return 0;
        }
        if (y <= 0) {
            return 1;
        }
        double factor = factor(a, b, x, y);
        return a * y >= b * x ? factor * fraction(a, b, x, y) : 1 - factor * fraction(b, a, y, x);
    }

    /** {@code x^a y^b / B(a, b)}. */
    static double factor(double a, double b, double x, double y) {
        double sum = a + b;
        double share = a / sum;
        double exponent = shift(a, x, share) + shift(b, y, b / sum);
        double stirling = Stirling.correction(sum) - Stirling.correction(a) - Stirling.correction(b);
        return Math.sqrt(a * (b / sum) / (2 * Math.PI)) * Math.exp(exponent + stirling);
    }

    /** {@code a (log(x / centre) - (x / centre - 1))}. The linear terms of both variables cancel. */
    private static double shift(double a, double x, double centre) {
        double relative = (x - centre) / centre;
        return relative < -0.5 ? a * (Math.log(x / centre) - relative) : a * Stirling.logOnePlusMinus(relative);
    }

    /** The continued fraction that, times {@link #factor}, gives {@code I_x(a, b)}; quick for {@code x} below the mean. */
    static double fraction(double a, double b, double x, double y) {
        double lambda = a * y - b * x;
        double beta = a / (a + 1) * (lambda + 1);
        double value = beta;
        double c = beta;
        double d = 0;
        for (int n = 1; n < MOST_TERMS; n++) { // Lentz's evaluation from the front
            double p = a + 2.0 * n - 1;
            double weight = n * (b - n) * x;
            double alpha = (a + n - 1) / p * ((a + b + n - 1) / p) * weight * x;
            beta = n + weight / p + (a + n) / (p + 2) * (lambda + 1 + n * (1 + y));
            d = 1 / (beta + alpha * d);
            c = beta + alpha / c;
            double change = c * d;
            value *= change;
            if (Math.abs(change - 1) <= 2e-16) {
                return 1 / value;
            }
        }
        throw new IllegalStateException("the continued fraction of the incomplete beta function at a " + a + ", b " + b + ", x " + x
                + " has not settled");
    }
}
