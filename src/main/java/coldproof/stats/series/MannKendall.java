package coldproof.stats.series;

import coldproof.stats.Argument;
import coldproof.stats.distribution.Normal;
import java.util.List;

/**
 * The Mann-Kendall test for a trend of any shape, from the signs of all pairs of a series: {@code S = sum over i < j of sign(x_j - x_i)}.
 *
 * <p>{@code Var S = (n (n - 1)(2n + 5) - sum t (t - 1)(2t + 5)) / 18} over groups of t equal values; {@code z = (S - sign S) / sqrt(Var S)}. Without
 * ties and up to {@value #MOST_EXACT} values the p value is exact, from the numbers of orders with each count of inversions; else it is normal. Values
 * are taken to be independent: autocorrelation makes it too eager.
 *
 * @param s the statistic
 * @param variance of it when there is no trend
 * @param z standardised, with continuity correction
 * @param tau Kendall's tau-b, in [-1, 1]; 0 where all values are equal
 * @param p two-sided probability of a trend at least as clear if there is none
 * @param exact whether p is exact
 * @see "H. B. Mann, Econometrica 13 (1945) 245-259; M. G. Kendall, Rank Correlation Methods (1975) (from memory)"
 */
public record MannKendall(long s, double variance, double z, double tau, double p, boolean exact) {
    private static final int MOST_EXACT = 60;

    /**
     * Tests a series.
     *
     * @param values in order, 3 or more, finite
     * @throws IllegalArgumentException if there are fewer, or one is not finite
     */
    public static MannKendall test(double[] values) {
        Argument.atLeast("number of values", values.length, 3);
        return ofRuns(List.of(values));
    }

    /**
     * Tests several runs for a trend they have in common: pairs inside runs count, and S and its variance add up.
     *
     * @param runs each in order, finite; at least one with two values
     * @throws IllegalArgumentException if no run has two values, or a value is not finite
     * @see "R. M. Hirsch, J. R. Slack, R. A. Smith, Water Resources Research 18 (1982) 107-121 (the same for seasons; from memory)"
     */
    public static MannKendall ofRuns(List<double[]> runs) {
        long s = 0;
        double pairs = 0;
        double tiedPairs = 0;
        double variance = 0;
        int values = 0;
        for (double[] run : runs) {
            int n = run.length;
            double tied = 0;
            for (int size : Ties.sizes(run)) {
                tied += size * (size - 1.0) * (2.0 * size + 5);
                tiedPairs += 0.5 * size * (size - 1.0);
            }
            s += signs(run);
            pairs += 0.5 * n * (n - 1.0);
            variance += (n * (n - 1.0) * (2.0 * n + 5) - tied) / 18;
            values += n;
        }
        if (pairs == 0) {
            throw new IllegalArgumentException("no run has two values");
        }
        double tau = tiedPairs == pairs ? 0 : s / Math.sqrt(pairs * (pairs - tiedPairs));
        double z = s == 0 ? 0 : (s - Long.signum(s)) / Math.sqrt(variance);
        boolean exact = tiedPairs == 0 && values <= MOST_EXACT;
        double p = exact ? exactP(runs, s) : Math.min(1, 2 * Normal.survival(Math.abs(z)));
        return new MannKendall(s, variance, z, tau, p, exact);
    }

    private static long signs(double[] run) {
        long s = 0;
        for (int i = 0; i < run.length; i++) {
            Argument.finite("value", run[i]);
            for (int j = 0; j < i; j++) {
                s += (long) Math.signum(run[i] - run[j]);
            }
        }
        return s;
    }

    /** Probability of |S| at least this large: the k-th value of a run adds 0 to k - 1 inversions, each equally often. */
    private static double exactP(List<double[]> runs, long s) {
        double[] share = {1};
        for (double[] run : runs) {
            for (int k = 2; k <= run.length; k++) {
                share = withOneMore(share, k);
            }
        }
        double p = 0;
        for (int inversions = 0; inversions < share.length; inversions++) {
            long each = share.length - 1 - 2L * inversions;
            p += Math.abs(each) >= Math.abs(s) ? share[inversions] : 0;
        }
        return Math.min(1, p);
    }

    private static double[] withOneMore(double[] share, int k) {
        double[] next = new double[share.length + k - 1];
        double window = 0;
        for (int i = 0; i < next.length; i++) {
            window += i < share.length ? share[i] : 0;
            window -= i >= k ? share[i - k] : 0;
            next[i] = window / k;
        }
        return next;
    }
}
