package coldproof.stats.series;

import coldproof.stats.Argument;
import coldproof.stats.distribution.StudentT;
import coldproof.stats.interval.Moments;

/**
 * Least-squares line through a series at the places 1, 2, 3, ..., with the t test of its slope on n - 2 degrees of freedom.
 *
 * @param slope per unit of place
 * @param intercept at place 0
 * @param standardError of the slope
 * @param p two-sided probability of a slope at least as steep if there is none; 1 where all values are equal
 */
public record Trend(double slope, double intercept, double standardError, double p) {
    /**
     * Fits a series.
     *
     * @param values in order, 3 or more, finite
     * @throws IllegalArgumentException if there are fewer, or one is not finite
     */
    public static Trend of(double[] values) {
        int n = Argument.atLeast("number of values", values.length, 3);
        Moments moments = Moments.of(values);
        double middle = 0.5 * (n + 1);
        double products = 0;
        for (int i = 0; i < n; i++) {
            products += (i + 1 - middle) * (values[i] - moments.mean());
        }
        double squares = n * ((double) n * n - 1) / 12;
        double slope = products / squares;
        double left = 0;
        for (int i = 0; i < n; i++) {
            double residual = values[i] - moments.mean() - slope * (i + 1 - middle);
            left += residual * residual;
        }
        double standardError = Math.sqrt(left / (n - 2) / squares);
        double p = slope == 0 ? 1 : StudentT.twoSidedP(slope / standardError, n - 2);
        return new Trend(slope, moments.mean() - slope * middle, standardError, p);
    }
}
