package coldproof.stats.model;

import coldproof.stats.interval.Moments;

/**
 * The two-group t test on log scores, for trials in free order or for the means of whole sessions. Assumes independent values that are
 * normal on the log scale; trials that share a session are not independent (see {@link SessionMeans}).
 */
public final class TwoGroups {
    private TwoGroups() {}

    /**
     * Student's test with a common variance: {@code se = s sqrt(1/m + 1/n)}, {@code s^2 = (SS1 + SS2) / (m + n - 2)}, {@code df = m + n - 2}.
     *
     * @param baseline log scores of the baseline, one or more
     * @param against log scores of the other level, one or more; together three or more
     * @return against minus baseline
     * @throws IllegalArgumentException if a group is empty, both hold a single value, or a value is not finite
     */
    public static Estimate pooled(double[] baseline, double[] against) {
        Moments first = Moments.of(baseline);
        Moments second = Moments.of(against);
        int df = first.count() + second.count() - 2;
        if (df < 1) {
            throw new IllegalArgumentException("two groups of one value each leave no degrees of freedom: 3 or more values are needed");
        }
        double variance = (first.sumOfSquares() + second.sumOfSquares()) / df;
        double standardError = Math.sqrt(variance * (1.0 / first.count() + 1.0 / second.count()));
        return Estimate.of(second.mean() - first.mean(), standardError, df);
    }

    /**
     * Welch's test with a variance for each group: {@code se^2 = s1^2/m + s2^2/n},
     * {@code df = se^4 / ((s1^2/m)^2/(m-1) + (s2^2/n)^2/(n-1))}.
     *
     * @param baseline log scores of the baseline, two or more
     * @param against log scores of the other level, two or more
     * @return against minus baseline
     * @throws IllegalArgumentException if a group has fewer than two values or a value is not finite
     * @see "B. L. Welch, Biometrika 34 (1947) 28-35"
     */
    public static Estimate welch(double[] baseline, double[] against) {
        Moments first = Moments.of(baseline);
        Moments second = Moments.of(against);
        double a = first.variance() / first.count();
        double b = second.variance() / second.count();
        double variance = a + b;
        double df = variance == 0 ? first.count() + second.count() - 2
                : variance * variance / (a * a / (first.count() - 1) + b * b / (second.count() - 1));
        return Estimate.of(second.mean() - first.mean(), Math.sqrt(variance), df);
    }
}
