package coldproof.stats.multiple;

import coldproof.stats.Argument;
import java.util.Comparator;
import java.util.stream.IntStream;

/**
 * Holm's step-down adjustment of p values: valid whatever the dependence between the tests.
 *
 * @see "S. Holm, A simple sequentially rejective multiple test procedure, Scandinavian Journal of Statistics 6 (1979) 65-70"
 */
public final class Holm {
    private Holm() {}

    /**
     * Adjusted p values: with {@code p(1) <= ... <= p(m)} the i-th is the largest of {@code (m - j + 1) p(j)} over {@code j <= i}, at most 1. A
     * test whose adjusted p is at or below the false-alarm rate is significant with that rate for the whole family.
     *
     * @param p p values in any order, each in [0, 1]
     * @return adjusted values in the same order
     * @throws IllegalArgumentException if a value is outside [0, 1] or NaN
     */
    public static double[] adjusted(double... p) {
        for (double each : p) {
            Argument.within("p", each, 0, 1);
        }
        int[] ascending = IntStream.range(0, p.length).boxed().sorted(Comparator.comparingDouble(i -> p[i])).mapToInt(i -> i).toArray();
        double[] adjusted = new double[p.length];
        double largest = 0;
        for (int i = 0; i < ascending.length; i++) {
            largest = Math.max(largest, Math.min(1, (p.length - i) * p[ascending[i]]));
            adjusted[ascending[i]] = largest;
        }
        return adjusted;
    }
}
