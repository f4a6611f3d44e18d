package coldproof.stats.distribution;

/**
 * The regularised incomplete gamma function with a tail on each side: power series below the mean, continued fraction above it.
 *
 * @see "M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions, 6.5.29 and 6.5.31"
 */
final class IncompleteGamma {
    private static final int MOST_TERMS = 1_000_000;

    private IncompleteGamma() {}

    /** {@code P(a, x)}. */
    static double lower(double a, double x) {
        if (x <= 0) {
            return 0;
        }
        return x < a + 1 ? term(a, x) * series(a, x) : 1 - term(a, x) * a * fraction(a, x);
    }

    /** {@code Q(a, x) = 1 - P(a, x)}. */
    static double upper(double a, double x) {
        if (x <= 0) {
            return 1;
        }
        return x < a + 1 ? 1 - term(a, x) * series(a, x) : term(a, x) * a * fraction(a, x);
    }

    /** {@code x^a exp(-x) / Gamma(a + 1)}: what {@code P} loses from {@code a} to {@code a + 1}, and a Poisson probability for whole a. */
    static double term(double a, double x) {
        if (a == 0) {
            return Math.exp(-x);
        }
        double relative = (x - a) / a;
        double exponent = relative < -0.5 ? a * (Math.log(x / a) - relative) : a * Stirling.logOnePlusMinus(relative);
        return Math.exp(exponent - Stirling.correction(a)) / Math.sqrt(2 * Math.PI * a);
    }

    private static double series(double a, double x) {
        double sum = 1;
        double term = 1;
        for (int n = 1; n < MOST_TERMS; n++) {
            term *= x / (a + n);
            sum += term;
            if (term < 1e-17 * sum) {
                return sum;
            }
        }
        throw unsettled(a, x);
    }

    private static double fraction(double a, double x) {
        double b = x + 1 - a;
        double value = b;
        double c = b;
        double d = 0;
        for (int n = 1; n < MOST_TERMS; n++) {
            double numerator = n * (a - n);
            b += 2;
            d = 1 / (b + numerator * d);
            c = b + numerator / c;
            value *= c * d;
            if (Math.abs(c * d - 1) <= 2e-16) {
                return 1 / value;
            }
        }
        throw unsettled(a, x);
    }

    private static IllegalStateException unsettled(double a, double x) {
        return new IllegalStateException("the incomplete gamma function at a " + a + ", x " + x + " has not settled");
    }
}
