package coldproof.stats.randomisation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.random.RandomGenerator;

/**
 * Sessions (or pairs, or blocks) drawn each by itself: the statistic is the mean of the sessions' statistics, and the assignments are all
 * combinations of one choice for each session.
 */
final class UnitSpace implements AssignmentSpace {
    private static final double MOST_CHOICES = 1 << 20; // listed for a single session
    private static final double LARGEST_HALF = 1 << 22;
    private static final int TABLE = 4096; // sums of several sessions' choices kept together for drawing: 32 KB, near the processor

    private final RandomisationScheme scheme;
    /** Choices of the listed sessions, already divided by the number of sessions: statistics and overlaps. */
    private final List<double[]> statistics = new ArrayList<>();
    private final List<double[]> overlaps = new ArrayList<>();
    /** Sessions with too many choices to list. */
    private final List<GroupSpace> unlisted = new ArrayList<>();
    private final int units;
    private double observed;
    private double largestShare;

    private UnitSpace(RandomisationScheme scheme, int units) {
        this.scheme = scheme;
        this.units = units;
    }

    /** Sign changes of independent differences. */
    static UnitSpace ofPairs(double[] differences) {
        UnitSpace space = new UnitSpace(RandomisationScheme.pairs(differences.length), differences.length);
        for (double difference : differences) {
            if (!Double.isFinite(difference)) {
                throw new IllegalArgumentException("difference " + difference + " is not finite");
            }
            space.add(new double[] {difference, -difference}, new double[] {1, -1}, difference);
        }
        return space;
    }

    /** Levels drawn afresh inside every session. */
    static UnitSpace ofSessions(List<double[]> scores, List<boolean[]> isAgainst, Restriction restriction) {
        int units = scores.size();
        int[] baseline = new int[units];
        int[] against = new int[units];
        for (int u = 0; u < units; u++) {
            against[u] = Sequences.countTrue(isAgainst.get(u));
            baseline[u] = isAgainst.get(u).length - against[u];
        }
        UnitSpace space = new UnitSpace(RandomisationScheme.within(baseline, against, restriction), units);
        for (int u = 0; u < units; u++) {
            GroupSpace session = GroupSpace.ofGroups(scores.get(u), isAgainst.get(u), restriction);
            if (session.scheme().counted() && session.scheme().assignments() <= MOST_CHOICES) {
                double[][] list = session.list();
                space.add(list[0], list[1], session.observed());
            } else {
                space.unlisted.add(session);
                space.observed += session.observed() / units;
                space.largestShare = Math.max(space.largestShare, session.largestShare() / units);
            }
        }
        return space;
    }

    /** A sequence for every session from those listed for it. */
    static UnitSpace ofSequences(List<double[]> scores, List<boolean[]> isAgainst, List<List<boolean[]>> allowedOfSession) {
        UnitSpace space = new UnitSpace(RandomisationScheme.sequences(allowedOfSession), scores.size());
        for (int u = 0; u < scores.size(); u++) {
            List<boolean[]> allowed = allowedOfSession.get(u);
            int drawn = Sequences.indexOf(allowed, isAgainst.get(u));
            if (drawn < 0) {
                throw new IllegalArgumentException("the observed sequence of session " + u + " is none of those allowed for it");
            }
            double[] statistic = new double[allowed.size()];
            double[] overlap = new double[allowed.size()];
            double[] indicator = new double[scores.get(u).length];
            for (int i = 0; i < indicator.length; i++) {
                indicator[i] = isAgainst.get(u)[i] ? 1 : 0;
            }
            for (int s = 0; s < statistic.length; s++) {
                statistic[s] = difference(scores.get(u), allowed.get(s));
                overlap[s] = difference(indicator, allowed.get(s));
            }
            space.add(statistic, overlap, statistic[drawn]);
        }
        return space;
    }

    /** Difference of means, against minus baseline; centred on the first value so that a common offset costs no digits. */
    static double difference(double[] values, boolean[] isAgainst) {
        if (values.length != isAgainst.length) {
            throw new IllegalArgumentException("a sequence of " + isAgainst.length + " for a session of " + values.length + " trials");
        }
        double[] sum = new double[2];
        int against = 0;
        for (int i = 0; i < values.length; i++) {
            sum[isAgainst[i] ? 1 : 0] += values[i] - values[0];
            against += isAgainst[i] ? 1 : 0;
        }
        return sum[1] / against - sum[0] / (values.length - against);
    }

    private void add(double[] statistic, double[] overlap, double drawn) {
        double[] share = new double[statistic.length];
        double[] overlapShare = new double[statistic.length];
        for (int i = 0; i < share.length; i++) {
            share[i] = statistic[i] / units;
            overlapShare[i] = overlap[i] / units;
            largestShare = Math.max(largestShare, Math.abs(share[i]));
        }
        statistics.add(share);
        overlaps.add(overlapShare);
        observed += drawn / units;
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

    /** Puts each session into the half that has fewer combinations so far, largest first. */
    private List<List<Integer>> halves() {
        List<Integer> order = new ArrayList<>();
        for (int u = 0; u < statistics.size(); u++) {
            order.add(u);
        }
        order.sort((a, b) -> Integer.compare(statistics.get(b).length, statistics.get(a).length));
        List<List<Integer>> halves = List.of(new ArrayList<>(), new ArrayList<>());
        double[] size = {1, 1};
        for (int u : order) {
            int half = size[0] <= size[1] ? 0 : 1;
            halves.get(half).add(u);
            size[half] *= statistics.get(u).length;
        }
        return halves;
    }

    private double size(List<Integer> half) {
        double size = 1;
        for (int u : half) {
            size *= statistics.get(u).length;
        }
        return size;
    }

    @Override
    public boolean isCountable(double exactUpTo) {
        if (!unlisted.isEmpty() || !(scheme.assignments() <= exactUpTo)) {
            return false;
        }
        List<List<Integer>> halves = halves();
        return size(halves.get(0)) <= LARGEST_HALF && size(halves.get(1)) <= LARGEST_HALF;
    }

    @Override
    public double countingWork() {
        List<List<Integer>> halves = halves();
        return size(halves.get(0)) + size(halves.get(1));
    }

    @Override
    public Tally count(double shift) {
        Thresholds thresholds = new Thresholds(observed - shift, largestShare);
        List<List<Integer>> halves = halves();
        double[] first = sums(halves.get(0), shift);
        double[] second = sums(halves.get(1), shift);
        double total = scheme.assignments();
        double extreme = thresholds.allExtreme() ? total
                : SortedSums.pairsAtLeast(first, second, thresholds.extremeFrom) + SortedSums.pairsAtMost(first, second, thresholds.extremeTo);
        return new Tally(total, extreme, SortedSums.pairsAtLeast(first, second, thresholds.greaterFrom),
                SortedSums.pairsAtMost(first, second, thresholds.lessTo));
    }

    private double[] sums(List<Integer> half, double shift) {
        double[][] choices = new double[half.size()][];
        for (int i = 0; i < choices.length; i++) {
            double[] statistic = statistics.get(half.get(i));
            double[] overlap = overlaps.get(half.get(i));
            choices[i] = new double[statistic.length];
            for (int s = 0; s < statistic.length; s++) {
                choices[i][s] = statistic[s] - shift * overlap[s];
            }
        }
        return SortedSums.ofChoices(choices);
    }

    @Override
    public Draws draws() {
        List<double[]> tables = new ArrayList<>();
        List<double[]> overlapTables = new ArrayList<>();
        double[] table = {0};
        double[] overlapTable = {0};
        for (int u = 0; u < statistics.size(); u++) {
            if (table.length > 1 && table.length * statistics.get(u).length > TABLE) {
                tables.add(table);
                overlapTables.add(overlapTable);
                table = new double[] {0};
                overlapTable = new double[] {0};
            }
            table = combined(table, statistics.get(u));
            overlapTable = combined(overlapTable, overlaps.get(u));
        }
        tables.add(table);
        overlapTables.add(overlapTable);
        List<Draws> others = new ArrayList<>();
        for (GroupSpace session : unlisted) {
            others.add(session.draws());
        }
        return (random, statistic, overlap) -> fill(random, statistic, overlap, tables, overlapTables, others);
    }

    private static double[] combined(double[] table, double[] choices) {
        double[] combined = new double[table.length * choices.length];
        for (int i = 0; i < combined.length; i++) {
            combined[i] = table[i % table.length] + choices[i / table.length];
        }
        return combined;
    }

    private void fill(RandomGenerator random, double[] statistic, double[] overlap, List<double[]> tables, List<double[]> overlapTables,
            List<Draws> others) {
        Arrays.fill(statistic, 0);
        if (overlap != null) {
            Arrays.fill(overlap, 0);
        }
        for (int t = 0; t < tables.size(); t++) {
            double[] table = tables.get(t);
            double[] overlapTable = overlapTables.get(t);
            for (int draw = 0; draw < statistic.length; draw++) {
                int choice = (int) Bounded.draw(random, table.length);
                statistic[draw] += table[choice];
                if (overlap != null) {
                    overlap[draw] += overlapTable[choice];
                }
            }
        }
        double[] one = new double[statistic.length];
        double[] oneOverlap = overlap == null ? null : new double[overlap.length];
        for (Draws other : others) {
            other.fill(random, one, oneOverlap);
            for (int draw = 0; draw < one.length; draw++) {
                statistic[draw] += one[draw] / units;
                if (overlap != null) {
                    overlap[draw] += oneOverlap[draw] / units;
                }
            }
        }
    }
}
