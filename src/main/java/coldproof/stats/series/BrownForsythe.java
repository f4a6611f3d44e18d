package coldproof.stats.series;

import coldproof.stats.interval.Moments;
import coldproof.stats.model.OneWayAnova;
import java.util.Arrays;
import java.util.List;

/**
 * The Brown-Forsythe test of equal spread: one-way analysis of variance of the distances from each group's median.
 *
 * @param f between groups against within
 * @param groupsDegreesOfFreedom groups - 1
 * @param valuesDegreesOfFreedom values - groups
 * @param p probability of an F at least as large where spreads are equal; 1 where no group varies
 * @see "M. B. Brown, A. B. Forsythe, Journal of the American Statistical Association 69 (1974) 364-367; NIST/SEMATECH e-Handbook, 1.3.5.10"
 */
public record BrownForsythe(double f, int groupsDegreesOfFreedom, int valuesDegreesOfFreedom, double p) {
    /**
     * Tests groups.
     *
     * @param groups two or more, each with a value, together with more values than groups; finite
     * @throws IllegalArgumentException if there are fewer, a group is empty or a value is not finite
     */
    public static BrownForsythe test(List<double[]> groups) {
        if (groups.size() < 2) {
            throw new IllegalArgumentException("number of groups " + groups.size() + " is below 2");
        }
        OneWayAnova anova = OneWayAnova.of(groups.stream().map(BrownForsythe::distances).toList());
        return new BrownForsythe(anova.f(), anova.groupsDegreesOfFreedom(), anova.valuesDegreesOfFreedom(), anova.p());
    }

    private static double[] distances(double[] group) {
        Moments.of(group); // refuses an empty group and what is not finite
        double[] sorted = group.clone();
        Arrays.sort(sorted);
        int n = sorted.length;
        double median = 0.5 * (sorted[(n - 1) / 2] + sorted[n / 2]);
        return Arrays.stream(group).map(value -> Math.abs(value - median)).toArray();
    }
}
