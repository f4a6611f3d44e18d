package coldproof.stats.distribution;

/** What Stirling's formula leaves over, and logarithms close to 1: the small differences from which densities are built without loss. */
final class Stirling {
    private Stirling() {}

    /**
     * {@code log Gamma(a) - (a - 1/2) log a + a - log(2 pi) / 2} for {@code a} above 0: the correction to Stirling's formula.
     *
     * @see "M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions, 6.1.40 (Bernoulli numbers)"
     */
    static double correction(double a) {
        double sum = 0;
        double x = a;
        while (x < 12) { // correction(x) - correction(x + 1) = (x + 1/2) log(1 + 1/x) - 1
            sum += stepDown(x);
            x++;
        }
        double r = 1 / (x * x);
        double tail = (1.0 / 12 - r * (1.0 / 360 - r * (1.0 / 1260 - r * (1.0 / 1680 - r * (1.0 / 1188 - r * (691.0 / 360360 - r / 156)))))) / x;
        return sum + tail;
    }

    private static double stepDown(double x) {
        if (x < 1) {
            return (x + 0.5) * Math.log1p(1 / x) - 1;
        }
        double r = 1 / (2 * x + 1);
        double square = r * r;
        double power = square;
        double sum = 0;
        for (int k = 3; power > 1e-18; k += 2) { // atanh(r) / r - 1
            sum += power / k;
            power *= square;
        }
        return sum;
    }

    /** {@code log(1 + x) - x} without cancellation, {@code x} above -1. */
    static double logOnePlusMinus(double x) {
        if (x < -0.25 || x > 0.35) {
            return (x < -0.5 || x > 1 ? Math.log(1 + x) : Math.log1p(x)) - x;
        }
        double r = x / (2 + x);
        double square = r * r;
        double series = 1.0 / 21;
        series = series * square + 1.0 / 19;
        series = series * square + 1.0 / 17;
        series = series * square + 1.0 / 15;
        series = series * square + 1.0 / 13;
        series = series * square + 1.0 / 11;
        series = series * square + 1.0 / 9;
        series = series * square + 1.0 / 7;
        series = series * square + 1.0 / 5;
        series = series * square + 1.0 / 3;
        return r * (2 * square * series - x);
    }
}
