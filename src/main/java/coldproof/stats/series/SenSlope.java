package coldproof.stats.series;

import coldproof.stats.distribution.Normal;
import coldproof.stats.interval.ConfidenceInterval;
import coldproof.stats.interval.Median;
import java.util.Arrays;

/**
 * Sen's slope: the median of the slopes of all pairs, which a few wild values cannot move. Its interval takes the slopes at the ranks that the
 * variance of Mann-Kendall's S gives.
 *
 * @param slope per unit of place
 * @param intercept {@code median(value) - slope median(place)}
 * @param interval of the slope
 * @see "P. K. Sen, Journal of the American Statistical Association 63 (1968) 1379-1389 (from memory)"
 */
public record SenSlope(double slope, double intercept, ConfidenceInterval interval) {
    /**
     * Fits a series at the places 1, 2, 3, ...
     *
     * @param values in order, 3 or more, finite
     * @param level of the interval, in (0, 1)
     * @throws IllegalArgumentException if there are fewer values, one is not finite, or the level is out of range
     */
    public static SenSlope of(double[] values, double level) {
        ConfidenceInterval.requireLevel(level);
        double variance = MannKendall.test(values).variance();
        int n = values.length;
        double[] slopes = new double[n * (n - 1) / 2];
        int at = 0;
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < i; j++) {
                slopes[at++] = (values[i] - values[j]) / (i - j);
            }
        }
        Arrays.sort(slopes);
        double reach = Normal.upperPoint(0.5 * (1 - level)) * Math.sqrt(variance);
        int low = (int) Math.max(0, Math.rint(0.5 * (slopes.length - reach)) - 1);
        int high = (int) Math.min(slopes.length - 1.0, Math.rint(0.5 * (slopes.length + reach)));
        double slope = Median.ofSorted(slopes);
        return new SenSlope(slope, Median.of(values) - slope * 0.5 * (n + 1), new ConfidenceInterval(level, slopes[low], slopes[high]));
    }
}
