package coldproof.stats.randomisation;

import coldproof.stats.interval.Moments;
import java.util.Arrays;

/**
 * A fixed number of places chosen from a row: levels drawn for trials, for whole sessions, or first places drawn for pairs. The statistic is
 * {@code scale * (sum of the chosen values) + offset}, for values that a shift d of the other level turns into {@code value - d slope}.
 */
final class GroupSpace implements AssignmentSpace {
    private static final int MOST_PLACES = 44; // two halves of 2^22 sums: 64 MB
    private static final double MOST_TO_GO_THROUGH = 1e7;

    private final double[] values;
    private final double[] slopes;
    private final boolean[] isChosen;
    private final int chosen;
    private final double scale;
    private final double offset;
    private final double offsetSlope;
    private final Restriction restriction;
    private final RandomisationScheme scheme;
    private final double observed;
    private final double largestShare;

    private GroupSpace(double[] values, double[] slopes, boolean[] isChosen, double scale, double offset, double offsetSlope,
            Restriction restriction) {
        this.values = values;
        this.slopes = slopes;
        this.isChosen = isChosen;
        this.scale = scale;
        this.offset = offset;
        this.offsetSlope = offsetSlope;
        this.restriction = restriction;
        chosen = Sequences.countTrue(isChosen);
        scheme = RandomisationScheme.groups(isChosen.length - chosen, chosen, restriction);
        if (!restriction.allows(isChosen)) {
            throw new IllegalArgumentException("the observed order " + Arrays.toString(isChosen) + " is none the restriction allows");
        }
        observed = scale * sumOf(values, isChosen) + offset;
        double largest = 0;
        for (double value : values) {
            largest = Math.max(largest, Math.abs(value));
        }
        largestShare = scale * largest;
    }

    private static double sumOf(double[] values, boolean[] flags) {
        double sum = 0;
        for (int i = 0; i < values.length; i++) {
            sum += flags[i] ? values[i] : 0;
        }
        return sum;
    }

    /** Difference of means: chosen minus the others. */
    static GroupSpace ofGroups(double[] scores, boolean[] isAgainst, Restriction restriction) {
        int n = scores.length;
        if (isAgainst.length != n) {
            throw new IllegalArgumentException(n + " scores for " + isAgainst.length + " levels");
        }
        int against = Sequences.countTrue(isAgainst);
        RandomisationScheme.requireGroups(n - against, against);
        double[] slopes = new double[n];
        for (int i = 0; i < n; i++) {
            slopes[i] = isAgainst[i] ? 1 : 0;
        }
        double scale = 1.0 / against + 1.0 / (n - against);
        return new GroupSpace(centred(scores), slopes, isAgainst.clone(), scale, 0, -(double) against / (n - against), restriction);
    }

    /** Mean difference of pairs of which those chosen begin with the baseline. */
    static GroupSpace ofPairs(double[] differences, boolean[] isBaselineFirst) {
        int n = differences.length;
        if (isBaselineFirst.length != n) {
            throw new IllegalArgumentException(n + " differences for " + isBaselineFirst.length + " orders");
        }
        RandomisationScheme.requireGroups(Sequences.countTrue(isBaselineFirst), n - Sequences.countTrue(isBaselineFirst));
        double[] signed = new double[n];
        double[] slopes = new double[n];
        double offset = 0;
        double offsetSlope = 0;
        for (int i = 0; i < n; i++) {
            requireFinite(differences[i]);
            double sign = isBaselineFirst[i] ? 1 : -1;
            signed[i] = sign * differences[i];
            slopes[i] = sign;
            offset -= signed[i] / n;
            offsetSlope -= sign / n;
        }
        return new GroupSpace(signed, slopes, isBaselineFirst.clone(), 2.0 / n, offset, offsetSlope, Restriction.NONE);
    }

    private static double[] centred(double[] scores) {
        double mean = Moments.of(scores).mean();
        double[] centred = new double[scores.length];
        for (int i = 0; i < centred.length; i++) {
            centred[i] = scores[i] - mean;
        }
        return centred;
    }

    private static void requireFinite(double value) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("difference " + value + " is not finite");
        }
    }

    @Override
    public RandomisationScheme scheme() {
        return scheme;
    }

    @Override
    public double observed() {
        return observed;
    }

    @Override
    public double largestShare() {
        return largestShare;
    }

    private boolean isHalved() {
        return restriction == Restriction.NONE || restriction == Restriction.NOT_SEPARATED;
    }

    @Override
    public boolean isCountable(double exactUpTo) {
        double all = Combinations.count(values.length, chosen);
        return isHalved() ? all <= exactUpTo && values.length <= MOST_PLACES : all <= Math.min(exactUpTo, MOST_TO_GO_THROUGH);
    }

    @Override
    public double countingWork() {
        return isHalved() ? Math.pow(2, values.length - values.length / 2) : Combinations.count(values.length, chosen);
    }

    @Override
    public Tally count(double shift) {
        double[] shifted = new double[values.length];
        double mean = 0;
        for (int i = 0; i < shifted.length; i++) {
            shifted[i] = values[i] - shift * slopes[i];
            mean += shifted[i] / shifted.length;
        }
        for (int i = 0; i < shifted.length; i++) {
            shifted[i] -= mean; // small sums round less; the number chosen is fixed, so the offset makes up for it
        }
        double base = offset - shift * offsetSlope + scale * chosen * mean;
        Thresholds thresholds = new Thresholds(observed - shift, largestShare);
        return isHalved() ? countHalves(shifted, base, thresholds) : goThrough(shifted, base, thresholds);
    }

    private Tally countHalves(double[] shifted, double base, Thresholds thresholds) {
        int n = shifted.length;
        double[][] low = SortedSums.bySize(shifted, 0, n / 2);
        double[][] high = SortedSums.bySize(shifted, n / 2, n);
        long[] counts = new long[3];
        for (int size = Math.max(0, chosen - (high.length - 1)); size <= Math.min(chosen, low.length - 1); size++) {
            double[] first = low[size];
            double[] second = high[chosen - size];
            counts[1] += SortedSums.pairsAtLeast(first, second, (thresholds.greaterFrom - base) / scale);
            counts[2] += SortedSums.pairsAtMost(first, second, (thresholds.lessTo - base) / scale);
            if (!thresholds.allExtreme()) {
                counts[0] += SortedSums.pairsAtLeast(first, second, (thresholds.extremeFrom - base) / scale)
                        + SortedSums.pairsAtMost(first, second, (thresholds.extremeTo - base) / scale);
            }
        }
        if (restriction == Restriction.NOT_SEPARATED && n > 2) {
            removeSeparated(shifted, base, thresholds, counts);
        }
        double total = scheme.assignments();
        return new Tally(total, thresholds.allExtreme() ? total : counts[0], counts[1], counts[2]);
    }

    private void removeSeparated(double[] shifted, double base, Thresholds thresholds, long[] counts) {
        for (int start : new int[] {0, shifted.length - chosen}) {
            double sum = 0;
            for (int i = start; i < start + chosen; i++) {
                sum += shifted[i];
            }
            double statistic = scale * sum + base;
            counts[0] -= thresholds.isExtreme(statistic) && !thresholds.allExtreme() ? 1 : 0;
            counts[1] -= statistic >= thresholds.greaterFrom ? 1 : 0;
            counts[2] -= statistic <= thresholds.lessTo ? 1 : 0;
        }
    }

    private Tally goThrough(double[] shifted, double base, Thresholds thresholds) {
        long[] counts = new long[4];
        GroupEnumeration.visit(shifted, slopes, chosen, (sum, overlap, flags) -> {
            if (restriction.allows(flags)) {
                double statistic = scale * sum + base;
                counts[0]++;
                counts[1] += thresholds.allExtreme() || thresholds.isExtreme(statistic) ? 1 : 0;
                counts[2] += statistic >= thresholds.greaterFrom ? 1 : 0;
                counts[3] += statistic <= thresholds.lessTo ? 1 : 0;
            }
        });
        return new Tally(counts[0], counts[1], counts[2], counts[3]);
    }

    @Override
    public Draws draws() {
        Draws sums = sums();
        return (random, statistic, overlap) -> {
            sums.fill(random, statistic, overlap);
            for (int i = 0; i < statistic.length; i++) {
                statistic[i] = scale * statistic[i] + offset;
            }
            for (int i = 0; overlap != null && i < overlap.length; i++) {
                overlap[i] = scale * overlap[i] + offsetSlope;
            }
        };
    }

    private Draws sums() {
        boolean many = values.length > ChunkedDraws.MOST_PLACES;
        if (restriction == Restriction.NONE && !many) {
            return new ChunkedDraws(values, slopes, chosen);
        }
        return isHalved() && many && MaskedDraws.suits(values.length, chosen) ? new MaskedDraws(values, slopes, chosen, restriction == Restriction.NONE)
                : new ShuffledDraws(values, slopes, chosen, restriction);
    }

    /** Every allowed statistic and overlap, for use as one choice among several sessions. */
    double[][] list() {
        int size = (int) scheme.assignments();
        double[][] list = new double[2][size];
        int[] next = new int[1];
        GroupEnumeration.visit(values, slopes, chosen, (sum, overlap, flags) -> {
            if (restriction.allows(flags)) {
                list[0][next[0]] = scale * sum + offset;
                list[1][next[0]++] = scale * overlap + offsetSlope;
            }
        });
        return list;
    }
}
