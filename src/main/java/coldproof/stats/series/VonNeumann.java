package coldproof.stats.series;

import coldproof.stats.Argument;
import coldproof.stats.interval.Moments;

/**
 * Von Neumann's ratio, {@code sum (x_(i+1) - x_i)^2 / sum (x_i - m)^2}: near 2 for independent values, low when neighbours resemble each other, as under
 * drift. The p value is exact for independent normal values.
 *
 * @param ratio in [0, 4]
 * @param pLow probability of a ratio at most as large for independent normal values
 * @see "J. von Neumann, Annals of Mathematical Statistics 12 (1941) 367-395 (from memory)"
 */
public record VonNeumann(double ratio, double pLow) {
    /**
     * Tests a series.
     *
     * @param values in order, 3 or more, finite, not all equal
     * @throws IllegalArgumentException if there are fewer, one is not finite or all are equal
     */
    public static VonNeumann of(double[] values) {
        int n = Argument.atLeast("number of values", values.length, 3);
        Moments moments = Moments.of(values);
        Argument.positive("sum of squares", moments.sumOfSquares());
        double steps = 0;
        for (int i = 1; i < n; i++) {
            steps += (values[i] - values[i - 1]) * (values[i] - values[i - 1]);
        }
        double ratio = steps / moments.sumOfSquares();
        double[] weights = new double[n - 1];
        for (int k = 1; k < n; k++) {
            double sine = Math.sin(0.5 * Math.PI * k / n);
            weights[k - 1] = 4 * sine * sine - ratio; // eigenvalues of the steps, the constant left out
        }
        return new VonNeumann(ratio, 1 - QuadraticForm.probabilityPositive(weights));
    }
}
