package coldproof.stats.randomisation;

import java.util.random.RandomGenerator;

/**
 * Draws a fixed number of up to 48 places in a few table look-ups. The places are cut into four chunks; for each chunk the sums of all its
 * subsets are tabulated by size of the subset. One whole number below C(n, k), uniform, names the sizes in the four chunks (a composition of
 * k, as often as it has subsets) and, by what is left of it, the subset in each: every choice of k places has exactly one number.
 */
final class ChunkedDraws implements AssignmentSpace.Draws {
    static final int MOST_PLACES = 48; // C(48, 24) and the product of four C(12, 6) are whole in a double
    private static final int CHUNKS = 4;
    private static final int GUIDE_BITS = 13;

    private final double[][] sums = new double[CHUNKS][];
    private final double[][] overlaps = new double[CHUNKS][];
    private final long total;
    private final int guideShift;
    private final int[] guide;
    private final long[] firstNumber;
    /** For each composition where the subsets of its size begin in each chunk's table. */
    private final int[] start;
    /** For each composition the numbers of subsets in chunk 0, in chunks 0 and 1 together and in chunk 2, and their reciprocals. */
    private final double[] radix;

    ChunkedDraws(double[] first, double[] second, int chosen) {
        int n = first.length;
        int[] size = new int[CHUNKS];
        int[][] classStart = new int[CHUNKS][];
        int from = 0;
        for (int c = 0; c < CHUNKS; c++) {
            size[c] = n / CHUNKS + (c < n % CHUNKS ? 1 : 0);
            int[] order = bySize(size[c]);
            classStart[c] = classStarts(size[c]);
            sums[c] = table(first, from, order);
            overlaps[c] = table(second, from, order);
            from += size[c];
        }
        int compositions = countCompositions(size, chosen);
        firstNumber = new long[compositions + 1];
        start = new int[compositions * CHUNKS];
        radix = new double[compositions * 6];
        total = fillCompositions(size, chosen, classStart);
        int bits = 64 - Long.numberOfLeadingZeros(total);
        guideShift = Math.max(0, bits - GUIDE_BITS);
        guide = new int[(int) (total - 1 >>> guideShift) + 1];
        int composition = 0;
        for (int i = 0; i < guide.length; i++) {
            while (firstNumber[composition + 1] <= (long) i << guideShift) {
                composition++;
            }
            guide[i] = composition;
        }
    }

    private static int countCompositions(int[] size, int chosen) {
        int count = 0;
        for (int a = 0; a <= size[0]; a++) {
            for (int b = 0; b <= size[1]; b++) {
                for (int c = 0; c <= size[2]; c++) {
                    int d = chosen - a - b - c;
                    count += d >= 0 && d <= size[3] ? 1 : 0;
                }
            }
        }
        return count;
    }

    private long fillCompositions(int[] size, int chosen, int[][] classStart) {
        int at = 0;
        long number = 0;
        for (int a = 0; a <= size[0]; a++) {
            for (int b = 0; b <= size[1]; b++) {
                for (int c = 0; c <= size[2]; c++) {
                    int d = chosen - a - b - c;
                    if (d < 0 || d > size[3]) {
                        continue;
                    }
                    int[] part = {a, b, c, d};
                    for (int chunk = 0; chunk < CHUNKS; chunk++) {
                        start[at * CHUNKS + chunk] = classStart[chunk][part[chunk]];
                    }
                    double ofFirst = Combinations.count(size[0], a);
                    double ofTwo = ofFirst * Combinations.count(size[1], b);
                    double ofThird = Combinations.count(size[2], c);
                    radix[at * 6] = ofFirst;
                    radix[at * 6 + 1] = 1 / ofFirst;
                    radix[at * 6 + 2] = ofTwo;
                    radix[at * 6 + 3] = 1 / ofTwo;
                    radix[at * 6 + 4] = ofThird;
                    radix[at * 6 + 5] = 1 / ofThird;
                    firstNumber[at++] = number;
                    number += (long) (ofTwo * ofThird * Combinations.count(size[3], d));
                }
            }
        }
        firstNumber[at] = number;
        return number;
    }

    /** The subsets of a chunk, as bit masks, sorted by how many places they hold. */
    private static int[] bySize(int size) {
        int[] next = classStarts(size);
        int[] order = new int[1 << size];
        for (int mask = 0; mask < order.length; mask++) {
            order[next[Integer.bitCount(mask)]++] = mask;
        }
        return order;
    }

    private static int[] classStarts(int size) {
        int[] starts = new int[size + 1];
        for (int i = 1; i <= size; i++) {
            starts[i] = starts[i - 1] + (int) Combinations.count(size, i - 1);
        }
        return starts;
    }

    private static double[] table(double[] weight, int from, int[] order) {
        double[] byMask = new double[order.length];
        for (int mask = 1; mask < order.length; mask++) {
            byMask[mask] = byMask[mask & mask - 1] + weight[from + Integer.numberOfTrailingZeros(mask)];
        }
        double[] sorted = new double[order.length];
        for (int i = 0; i < order.length; i++) {
            sorted[i] = byMask[order[i]];
        }
        return sorted;
    }

    @Override
    public void fill(RandomGenerator random, double[] statistic, double[] overlap) {
        double[] sums0 = sums[0];
        double[] sums1 = sums[1];
        double[] sums2 = sums[2];
        double[] sums3 = sums[3];
        for (int draw = 0; draw < statistic.length; draw++) {
            long number = Bounded.draw(random, total);
            int at = guide[(int) (number >>> guideShift)];
            while (number >= firstNumber[at + 1]) {
                at++;
            }
            double left = number - firstNumber[at];
            // Division of whole numbers below 2^40 by a reciprocal: half a unit keeps the quotient clear of the next whole number.
            int upper = (int) ((left + 0.5) * radix[at * 6 + 3]);
            double lower = left - upper * radix[at * 6 + 2];
            int second = (int) ((lower + 0.5) * radix[at * 6 + 1]);
            int first = (int) (lower - second * radix[at * 6]);
            int fourth = (int) ((upper + 0.5) * radix[at * 6 + 5]);
            int third = (int) (upper - fourth * radix[at * 6 + 4]);
            first += start[at * CHUNKS];
            second += start[at * CHUNKS + 1];
            third += start[at * CHUNKS + 2];
            fourth += start[at * CHUNKS + 3];
            statistic[draw] = sums0[first] + sums1[second] + (sums2[third] + sums3[fourth]);
            if (overlap != null) {
                overlap[draw] = overlaps[0][first] + overlaps[1][second] + (overlaps[2][third] + overlaps[3][fourth]);
            }
        }
    }
}
