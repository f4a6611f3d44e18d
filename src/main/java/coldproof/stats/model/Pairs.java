package coldproof.stats.model;

import coldproof.stats.interval.Moments;

/** The paired t test: differences of neighbouring trials, so that whatever both share drops out. */
public final class Pairs {
    private Pairs() {}

    /**
     * Student's test on the differences {@code against[i] - baseline[i]}: {@code se = s_difference / sqrt(n)}, {@code df = n - 1}.
     *
     * @param baseline log scores of the baseline, one a pair, two or more pairs
     * @param against log scores of the other level in the same order
     * @throws IllegalArgumentException if the lengths differ, there are fewer than two pairs, or a value is not finite
     */
    public static Estimate test(double[] baseline, double[] against) {
        double[] differences = differences(baseline, against);
        if (differences.length < 2) {
            throw new IllegalArgumentException("a paired test needs 2 or more pairs, not " + differences.length);
        }
        Moments moments = Moments.of(differences);
        return Estimate.of(moments.mean(), moments.standardDeviation() / Math.sqrt(moments.count()), moments.count() - 1);
    }

    /**
     * The differences {@code against[i] - baseline[i]}.
     *
     * @throws IllegalArgumentException if the lengths differ
     */
    public static double[] differences(double[] baseline, double[] against) {
        if (baseline.length != against.length) {
            throw new IllegalArgumentException("a pair needs both its scores: " + baseline.length + " of the baseline, " + against.length
                    + " of the other level");
        }
        double[] differences = new double[baseline.length];
        for (int i = 0; i < differences.length; i++) {
            differences[i] = against[i] - baseline[i];
        }
        return differences;
    }
}
