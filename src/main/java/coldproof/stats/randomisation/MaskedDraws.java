package coldproof.stats.randomisation;

import java.util.Arrays;
import java.util.random.RandomGenerator;

/**
 * Draws a fixed number of many places, about half of them, sixty-four at a time: every place is chosen or not by a random bit, and as many
 * places drawn at random as there are too many or too few are then changed. Neither step prefers a place to another, so all choices of so many
 * places are equally likely. The sums of the chosen values come from tables of the subsets of eight places each.
 */
final class MaskedDraws implements AssignmentSpace.Draws {
    private static final int ROW = 8; // places whose subsets are tabulated together
    private static final int TOGETHER = 32; // draws summed in turn, so that a row of the table stays near the processor
    private static final int MOST_CHANGES = 8; // of so many places one: with more to change, swapping is as quick

    private final int places;
    private final double[][] sums;
    private final double[] second;
    private final int chosen;
    private final int placeBits;
    private final int words;
    private final long lastWord;
    /** Masks that are drawn again. */
    private final long[][] forbidden;

    /** {@code mayBeSeparated} is whether the choices of the first and of the last places only may be drawn. */
    MaskedDraws(double[] first, double[] second, int chosen, boolean mayBeSeparated) {
        places = first.length;
        sums = table(first);
        this.second = second;
        this.chosen = chosen;
        placeBits = Integer.SIZE - Integer.numberOfLeadingZeros(places);
        words = (places + Long.SIZE - 1) / Long.SIZE;
        lastWord = -1L >>> words * Long.SIZE - places;
        forbidden = mayBeSeparated ? new long[0][] : new long[][] {run(0, chosen), run(places - chosen, places)};
    }

    /** Whether this way is quick: nearly half of the places are chosen. */
    static boolean suits(int places, int chosen) {
        return Math.abs(places - 2 * chosen) <= 2 * (places / MOST_CHANGES);
    }

    private long[] run(int from, int to) {
        long[] mask = new long[words];
        for (int place = from; place < to; place++) {
            mask[place / Long.SIZE] |= 1L << place;
        }
        return mask;
    }

    @Override
    public void fill(RandomGenerator random, double[] statistic, double[] overlap) {
        double[][] overlaps = overlap == null ? null : table(second);
        Arrays.fill(statistic, 0);
        if (overlap != null) {
            Arrays.fill(overlap, 0);
        }
        long[][] masks = new long[TOGETHER][words];
        for (int from = 0; from < statistic.length; from += TOGETHER) {
            int count = Math.min(TOGETHER, statistic.length - from);
            for (int draw = 0; draw < count; draw++) {
                choose(random, masks[draw]);
            }
            add(sums, masks, statistic, from, count);
            if (overlap != null) {
                add(overlaps, masks, overlap, from, count);
            }
        }
    }

    private void choose(RandomGenerator random, long[] mask) {
        do {
            int excess = -chosen;
            for (int word = 0; word < words; word++) {
                mask[word] = random.nextLong() & (word == words - 1 ? lastWord : -1L);
                excess += Long.bitCount(mask[word]);
            }
            correct(random, mask, excess);
        } while (isForbidden(mask));
    }

    /** Changes places drawn from the bits of random numbers, a few from each; numbers beyond the last place are drawn again. */
    private void correct(RandomGenerator random, long[] mask, int tooMany) {
        int excess = tooMany;
        long bits = 0;
        int left = 0;
        while (excess != 0) {
            if (left == 0) {
                bits = random.nextLong();
                left = Long.SIZE / placeBits;
            }
            int place = (int) (bits & (1L << placeBits) - 1);
            bits >>>= placeBits;
            left--;
            boolean isChosen = place < places && (mask[place / Long.SIZE] >>> place & 1) != 0;
            if (place < places && isChosen == excess > 0) {
                mask[place / Long.SIZE] ^= 1L << place;
                excess += isChosen ? -1 : 1;
            }
        }
    }

    private boolean isForbidden(long[] mask) {
        for (long[] other : forbidden) {
            if (Arrays.equals(mask, other)) {
                return true;
            }
        }
        return false;
    }

    private static void add(double[][] table, long[][] masks, double[] sum, int from, int count) {
        for (int row = 0; row < table.length; row++) {
            double[] subsets = table[row];
            int word = row / (Long.SIZE / ROW);
            int shift = row * ROW;
            for (int draw = 0; draw < count; draw++) {
                sum[from + draw] += subsets[(int) (masks[draw][word] >>> shift) & subsets.length - 1];
            }
        }
    }

    /** For each eight places the sums of all their subsets; the shift of a mask counts modulo its size. */
    private static double[][] table(double[] weight) {
        double[][] table = new double[(weight.length + ROW - 1) / ROW][1 << ROW];
        for (int row = 0; row < table.length; row++) {
            double[] subsets = table[row];
            for (int subset = 1; subset < subsets.length; subset++) {
                int place = row * ROW + Integer.numberOfTrailingZeros(subset);
                subsets[subset] = subsets[subset & subset - 1] + (place < weight.length ? weight[place] : 0);
            }
        }
        return table;
    }
}
