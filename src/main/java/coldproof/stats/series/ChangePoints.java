package coldproof.stats.series;

import coldproof.stats.Argument;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * Finds where a series changes: the segmentation with the smallest sum of segment costs plus a penalty for each change, exactly.
 *
 * <p>{@code F(t) = min over s of F(s) + C(s, t) + penalty}, {@code F(0) = -penalty}; a start {@code s} that is worse than {@code F(t)}
 * even without a penalty can never be best again and is dropped, which makes the search linear in the length for series that change now and
 * then. Series without a change keep all starts and take time with the square of the length.
 *
 * @see "R. Killick, P. Fearnhead, I. A. Eckley, J. Am. Stat. Assoc. 107 (2012) 1590-1598 (from memory)"
 */
public final class ChangePoints {
    /** What a segment costs. */
    public enum Cost {
        /** Sum of squares about its mean, over a variance that is known: changes of the mean. */
        MEAN,
        /** {@code n (ln(2 pi v) + 1)} with its own mean square v about its mean: changes of mean or variance. */
        MEAN_AND_VARIANCE
    }

    private static final double SMALLEST_SHARE = 1e-14; // of the whole variance: a segment of equal values has a cost without bound

    private final double[] sums;
    private final double[] squares;
    private final Cost cost;
    private final double variance;
    private final double smallest;

    private ChangePoints(double[] values, Cost cost, double variance) {
        this.cost = cost;
        this.variance = variance;
        int n = values.length;
        double mean = 0;
        for (double value : values) {
            mean += value / n;
        }
        sums = new double[n + 1];
        squares = new double[n + 1];
        for (int i = 0; i < n; i++) {
            double centred = values[i] - mean; // prefix sums about the mean lose fewer digits
            sums[i + 1] = sums[i] + centred;
            squares[i + 1] = squares[i] + centred * centred;
        }
        smallest = Math.max(Double.MIN_NORMAL, SMALLEST_SHARE * squares[n] / n);
    }

    /**
     * The best segmentation.
     *
     * @param starts first index of each new segment, rising; empty when nothing changes
     * @param cost sum of the segments' costs and the penalties
     */
    public record Result(List<Integer> starts, double cost) {
        /** Copies. */
        public Result {
            starts = List.copyOf(starts);
        }
    }

    /**
     * Finds the best segmentation.
     *
     * @param values two or more finite numbers
     * @param cost what a segment costs
     * @param variance variance of the noise, above 0; not used by {@link Cost#MEAN_AND_VARIANCE}
     * @param penalty what each change costs, 0 or more; {@code 2 ln n} and more is usual, times {@code (1 + r) / (1 - r)} where neighbouring
     *     values are correlated by r
     * @param shortest fewest values in a segment, 1 or more, 2 or more for {@link Cost#MEAN_AND_VARIANCE}
     * @return the starts of the new segments and the whole cost; equal costs go to the latest last start
     * @throws IllegalArgumentException if an argument is out of its range
     */
    public static Result of(double[] values, Cost cost, double variance, double penalty, int shortest) {
        for (double value : values) {
            Argument.finite("value", value);
        }
        if (values.length < Math.max(2, shortest) || shortest < (cost == Cost.MEAN ? 1 : 2) || !(penalty >= 0) || cost == Cost.MEAN && !(variance > 0)) {
            throw new IllegalArgumentException(values.length + " values, shortest segment " + shortest + ", penalty " + penalty + ", variance " + variance);
        }
        return new ChangePoints(values, cost, variance).search(penalty, shortest);
    }

    private Result search(double penalty, int shortest) {
        int n = sums.length - 1;
        double[] best = new double[n + 1];
        int[] before = new int[n + 1];
        int[] dropAt = new int[n + 1];
        int[] starts = new int[n + 1];
        int count = 1;
        best[0] = -penalty;
        dropAt[0] = Integer.MAX_VALUE;
        for (int t = 1; t <= n; t++) {
            best[t] = Double.POSITIVE_INFINITY;
            dropAt[t] = Integer.MAX_VALUE;
            for (int i = 0; i < count; i++) {
                int s = starts[i];
                double total = t - s < shortest ? Double.POSITIVE_INFINITY : best[s] + segment(s, t) + penalty;
                if (total <= best[t]) {
                    best[t] = total;
                    before[t] = s;
                }
            }
            count = prune(starts, count, dropAt, best, t, shortest);
            if (best[t] < Double.POSITIVE_INFINITY) {
                starts[count++] = t;
            }
        }
        List<Integer> changes = new ArrayList<>();
        for (int t = before[n]; t > 0; t = before[t]) {
            changes.add(t);
        }
        Collections.reverse(changes);
        return new Result(changes, best[n]);
    }

    /** A start that is beaten at t is beaten from t + shortest on, when a change at t itself becomes possible. */
    private int prune(int[] starts, int count, int[] dropAt, double[] best, int t, int shortest) {
        int kept = 0;
        for (int i = 0; i < count; i++) {
            int s = starts[i];
            if (dropAt[s] == Integer.MAX_VALUE && t - s >= shortest && best[s] + segment(s, t) > best[t]) {
                dropAt[s] = t + shortest;
            }
            if (dropAt[s] > t) {
                starts[kept++] = s;
            }
        }
        return kept;
    }

    private double segment(int from, int to) {
        int n = to - from;
        double sum = sums[to] - sums[from];
        double about = Math.max(0, squares[to] - squares[from] - sum * sum / n);
        return cost == Cost.MEAN ? about / variance : n * (Math.log(2 * Math.PI * Math.max(smallest, about / n)) + 1);
    }
}
