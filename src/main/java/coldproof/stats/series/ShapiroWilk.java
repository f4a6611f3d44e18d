package coldproof.stats.series;

import coldproof.stats.Argument;
import coldproof.stats.distribution.Normal;
import coldproof.stats.interval.Moments;
import java.util.Arrays;

/**
 * The Shapiro-Wilk test of normality with Royston's approximations of its weights and of its p value.
 *
 * @param w between about 0 and 1; small is not normal
 * @param p probability of a w at most as large for a normal sample
 * @see "S. S. Shapiro, M. B. Wilk, Biometrika 52 (1965) 591-611; P. Royston, Applied Statistics 44 (1995) 547-551, algorithm AS R94 (constants from memory)"
 */
public record ShapiroWilk(double w, double p) {
    private static final double[] LAST_WEIGHT = {0, 0.221157, -0.147981, -2.07119, 4.434685, -2.706056};
    private static final double[] NEXT_WEIGHT = {0, 0.042981, -0.293762, -1.752461, 5.682633, -3.582633};
    private static final double[] SMALL_MEAN = {0.544, -0.39978, 0.025054, -6.714e-4};
    private static final double[] SMALL_LOG_SD = {1.3822, -0.77857, 0.062767, -0.0020322};
    private static final double[] LARGE_MEAN = {-1.5861, -0.31082, -0.083751, 0.0038915};
    private static final double[] LARGE_LOG_SD = {-0.4803, -0.082676, 0.0030302};

    /**
     * Tests a sample.
     *
     * @param values 3 to 5000, finite, not all equal
     * @throws IllegalArgumentException if there are fewer or more, one is not finite or all are equal
     */
    public static ShapiroWilk test(double[] values) {
        int n = Argument.atLeast("number of values", values.length, 3);
        if (n > 5000) {
            throw new IllegalArgumentException("number of values " + n + " is above 5000, for which the approximation was made");
        }
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        Moments moments = Moments.of(sorted);
        Argument.positive("sum of squares", moments.sumOfSquares());
        double[] weights = weights(n);
        double sum = 0;
        for (int i = 0; i < weights.length; i++) {
            sum += weights[i] * (sorted[n - 1 - i] - sorted[i]);
        }
        double w = Math.min(1, sum * sum / moments.sumOfSquares());
        return new ShapiroWilk(w, p(w, n));
    }

    /** Weights of the largest, the next, ... against the smallest, the next, ...; the middle value of an odd number has none. */
    private static double[] weights(int n) {
        if (n == 3) {
            return new double[] {Math.sqrt(0.5)};
        }
        int half = n / 2;
        double[] scores = new double[half];
        double squares = 0;
        for (int i = 0; i < half; i++) {
            scores[i] = Normal.upperPoint((i + 1 - 0.375) / (n + 0.25));
            squares += 2 * scores[i] * scores[i];
        }
        double root = Math.sqrt(squares);
        double x = 1 / Math.sqrt(n);
        int fitted = n > 5 ? 2 : 1;
        double[] weights = new double[half];
        weights[0] = scores[0] / root + polynomial(LAST_WEIGHT, x);
        double left = squares - 2 * scores[0] * scores[0];
        double rest = 1 - 2 * weights[0] * weights[0];
        if (fitted == 2) {
            weights[1] = scores[1] / root + polynomial(NEXT_WEIGHT, x);
            left -= 2 * scores[1] * scores[1];
            rest -= 2 * weights[1] * weights[1];
        }
        double scale = Math.sqrt(left / rest);
        for (int i = fitted; i < half; i++) {
            weights[i] = scores[i] / scale;
        }
        return weights;
    }

    private static double p(double w, int n) {
        if (n == 3) { // exact
            return Math.min(1, Math.max(0, 6 / Math.PI * (Math.asin(Math.sqrt(w)) - Math.asin(Math.sqrt(0.75)))));
        }
        double y = Math.log1p(-w);
        double mean;
        double sd;
        if (n <= 11) {
            double bound = -2.273 + 0.459 * n;
            if (y >= bound) {
                return 0;
            }
            y = -Math.log(bound - y);
            mean = polynomial(SMALL_MEAN, n);
            sd = Math.exp(polynomial(SMALL_LOG_SD, n));
        } else {
            double logN = Math.log(n);
            mean = polynomial(LARGE_MEAN, logN);
            sd = Math.exp(polynomial(LARGE_LOG_SD, logN));
        }
        return Normal.survival((y - mean) / sd);
    }

    private static double polynomial(double[] coefficients, double x) {
        double value = 0;
        for (int i = coefficients.length - 1; i >= 0; i--) {
            value = value * x + coefficients[i];
        }
        return value;
    }
}
