package coldproof.trace;

import coldproof.stats.series.ChangePoints;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * When the level of power changed, by the exactly optimal segmentation of its block means. The penalty of a change is
 * {@code 3 ln n (1 + r) / (1 - r)}: n correlated values tell as much as {@code n (1 - r) / (1 + r)} independent ones.
 */
final class Changes {
    private static final int SHORTEST = 3; // blocks
    private static final double PENALTY = 3; // times ln n; 2 is the usual least
    private static final double LEAST_STEP = 0.02; // relative: changes smaller than this are the work's own wandering
    private static final double NORMAL = 1.4826; // makes the median absolute deviation the standard deviation of normal values

    private Changes() {}

    static List<Double> of(Blocks blocks, Channel power) {
        double[] all = blocks.channels().getOrDefault(power, new double[0]);
        int first = all.length > 0 && Double.isNaN(all[0]) ? 1 : 0; // a first row that is half rest may leave the first block without any
        double[] values = Arrays.stream(all, first, all.length).filter(value -> !Double.isNaN(value)).toArray();
        if (values.length < 4 * SHORTEST || values.length < all.length - first) {
            return List.of();
        }
        double level = Arrays.stream(values).average().orElse(0);
        double noise = Math.max(noise(values), LEAST_STEP / 2 * Math.abs(level));
        double r = correlation(values);
        double penalty = PENALTY * Math.log(values.length) * (1 + r) / (1 - r);
        List<Double> changes = new ArrayList<>();
        if (noise > 0) {
            ChangePoints.of(values, ChangePoints.Cost.MEAN, noise * noise, penalty, SHORTEST).starts().forEach(start -> changes.add((first + start) * blocks.stepSeconds()));
        }
        return changes;
    }

    /** From neighbouring differences, which a change of level touches only once. */
    private static double noise(double[] values) {
        double[] steps = new double[values.length - 1];
        Arrays.setAll(steps, i -> Math.abs(values[i + 1] - values[i]));
        Arrays.sort(steps);
        return NORMAL * steps[steps.length / 2] / Math.sqrt(2);
    }

    /** Correlation of neighbours about the mean of the last half, where the level stands; in [0, 0.9]. */
    private static double correlation(double[] values) {
        int from = values.length / 2;
        double mean = Arrays.stream(values, from, values.length).average().orElse(0);
        double squares = 0;
        double products = 0;
        for (int i = from; i < values.length; i++) {
            squares += (values[i] - mean) * (values[i] - mean);
            products += i > from ? (values[i] - mean) * (values[i - 1] - mean) : 0;
        }
        return squares > 0 ? Math.max(0, Math.min(0.9, products / squares)) : 0;
    }
}
