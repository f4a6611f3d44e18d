package coldproof.stats.interval;

import java.util.Arrays;

/** The middle of a sample: of an even number of values the mean of the two in the middle. */
public final class Median {
    private Median() {}

    /** Median of the values that are not NaN; NaN where none is left. */
    public static double of(double... values) {
        return ofSorted(Arrays.stream(values).filter(value -> !Double.isNaN(value)).sorted().toArray());
    }

    /** Median of values in rising order, none of them NaN; NaN where there is none. */
    public static double ofSorted(double[] sorted) {
        int n = sorted.length;
        return n == 0 ? Double.NaN : 0.5 * (sorted[(n - 1) / 2] + sorted[n / 2]);
    }
}
