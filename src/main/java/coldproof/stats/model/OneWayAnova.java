package coldproof.stats.model;

import coldproof.stats.distribution.CentralF;
import coldproof.stats.interval.Moments;
import java.util.List;

/**
 * One-way analysis of variance. All values are first taken relative to the very first, so that a large common offset costs no digits.
 *
 * @param groupsSquares sum of squares between groups
 * @param groupsDegreesOfFreedom groups - 1
 * @param valuesSquares sum of squares within groups
 * @param valuesDegreesOfFreedom values - groups
 * @param f mean square between over mean square within; infinite where groups differ and nothing varies within, 0 where nothing varies at all
 * @param p probability of an F at least as large where group means are equal
 */
public record OneWayAnova(double groupsSquares, int groupsDegreesOfFreedom, double valuesSquares, int valuesDegreesOfFreedom, double f, double p) {
    /**
     * Analyses groups.
     *
     * @param groups two or more, none empty, together with more values than groups; finite
     * @throws IllegalArgumentException if there are fewer, a group is empty or a value is not finite
     */
    public static OneWayAnova of(List<double[]> groups) {
        int values = groups.stream().mapToInt(group -> group.length).sum();
        int within = values - groups.size();
        if (groups.size() < 2 || within < 1) {
            throw new IllegalArgumentException(values + " values in " + groups.size() + " groups: two groups or more, and more values than groups, are needed");
        }
        double origin = groups.get(0).length == 0 ? 0 : groups.get(0)[0];
        double[] means = new double[groups.size()];
        double[] all = new double[values];
        double withinSquares = 0;
        int at = 0;
        for (int g = 0; g < means.length; g++) {
            double[] centred = new double[groups.get(g).length];
            for (int i = 0; i < centred.length; i++) {
                centred[i] = groups.get(g)[i] - origin;
                all[at++] = centred[i];
            }
            Moments moments = Moments.of(centred);
            means[g] = moments.mean();
            withinSquares += moments.sumOfSquares();
        }
        double grandMean = Moments.of(all).mean();
        double betweenSquares = 0;
        for (int g = 0; g < means.length; g++) {
            betweenSquares += groups.get(g).length * (means[g] - grandMean) * (means[g] - grandMean);
        }
        int between = means.length - 1;
        double f = betweenSquares == 0 ? 0 : betweenSquares / between / (withinSquares / within);
        double p = f == Double.POSITIVE_INFINITY ? 0 : CentralF.survival(f, between, within);
        return new OneWayAnova(betweenSquares, between, withinSquares, within, f, p);
    }
}
