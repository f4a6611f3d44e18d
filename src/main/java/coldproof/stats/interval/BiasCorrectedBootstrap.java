package coldproof.stats.interval;

import coldproof.stats.Argument;
import coldproof.stats.distribution.Normal;
import java.util.Arrays;
import java.util.random.RandomGenerator;

/**
 * The bias-corrected and accelerated bootstrap interval for a mean or a difference of two means: no shape of the noise is assumed, but with fewer than about
 * eight values a sample it is too narrow.
 *
 * <p>{@code z0} is the normal point of the share of resampled estimates below the estimate (half of those equal to it), the acceleration
 * {@code sum L^3 / (6 (sum L^2)^(3/2))} over the influences {@code L = +-(x - mean) / n}; the ends are the resampled estimates at
 * {@code Phi(z0 + (z0 + z) / (1 - acceleration (z0 + z)))}.
 *
 * @param estimate of the values themselves
 * @param acceleration of the interval
 * @param interval of the estimate
 * @see "B. Efron, R. J. Tibshirani, An Introduction to the Bootstrap (1993), ch. 14 (from memory)"
 */
public record BiasCorrectedBootstrap(double estimate, double acceleration, ConfidenceInterval interval) {
    /**
     * The difference {@code mean(against) - mean(baseline)} of independent samples, each resampled by itself.
     *
     * @param baseline three or more values, finite, not all equal
     * @param against likewise
     * @param level in (0, 1)
     * @param resamples 100 or more
     * @param chance draws the resamples
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static BiasCorrectedBootstrap ofDifference(double[] baseline, double[] against, double level, int resamples, RandomGenerator chance) {
        return of(new double[][] {against, baseline}, level, resamples, chance);
    }

    /**
     * The mean of one sample, such as the log ratios of pairs.
     *
     * @param values three or more, finite, not all equal
     * @param level in (0, 1)
     * @param resamples 100 or more
     * @param chance draws the resamples
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static BiasCorrectedBootstrap ofMean(double[] values, double level, int resamples, RandomGenerator chance) {
        return of(new double[][] {values}, level, resamples, chance);
    }

    private static BiasCorrectedBootstrap of(double[][] samples, double level, int resamples, RandomGenerator chance) {
        ConfidenceInterval.requireLevel(level);
        Argument.atLeast("resamples", resamples, 100);
        double estimate = 0;
        double squares = 0;
        double cubes = 0;
        for (int s = 0; s < samples.length; s++) {
            Argument.atLeast("values of a sample", samples[s].length, 3);
            double sign = s == 0 ? 1 : -1;
            double mean = Moments.of(samples[s]).mean();
            estimate += sign * mean;
            for (double value : samples[s]) {
                double influence = sign * (value - mean) / samples[s].length;
                squares += influence * influence;
                cubes += influence * influence * influence;
            }
        }
        Argument.positive("spread", squares);
        double acceleration = cubes / (6 * Math.pow(squares, 1.5));
        double[] drawn = draw(samples, resamples, chance);
        return new BiasCorrectedBootstrap(estimate, acceleration, interval(drawn, estimate, acceleration, level));
    }

    private static double[] draw(double[][] samples, int resamples, RandomGenerator chance) {
        double[] drawn = new double[resamples];
        for (int r = 0; r < resamples; r++) {
            for (int s = 0; s < samples.length; s++) {
                double sum = 0;
                for (int i = 0; i < samples[s].length; i++) {
                    sum += samples[s][chance.nextInt(samples[s].length)];
                }
                drawn[r] += (s == 0 ? 1 : -1) * sum / samples[s].length;
            }
        }
        Arrays.sort(drawn);
        return drawn;
    }

    private static ConfidenceInterval interval(double[] drawn, double estimate, double acceleration, double level) {
        double below = 0;
        for (double each : drawn) {
            below += each < estimate ? 1 : each == estimate ? 0.5 : 0;
        }
        double share = Math.min(1 - 0.5 / drawn.length, Math.max(0.5 / drawn.length, below / drawn.length));
        double z0 = Normal.quantile(share);
        double z = Normal.upperPoint(0.5 * (1 - level));
        return new ConfidenceInterval(level, at(drawn, Normal.cdf(z0 + (z0 - z) / (1 - acceleration * (z0 - z)))),
                at(drawn, Normal.cdf(z0 + (z0 + z) / (1 - acceleration * (z0 + z)))));
    }

    /** The point below which a share of the sorted values lies, between neighbours in proportion. */
    private static double at(double[] sorted, double share) {
        double place = share * (sorted.length - 1);
        int low = (int) Math.floor(place);
        int high = Math.min(sorted.length - 1, low + 1);
        return sorted[low] + (place - low) * (sorted[high] - sorted[low]);
    }
}
