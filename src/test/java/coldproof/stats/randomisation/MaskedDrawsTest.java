package coldproof.stats.randomisation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MaskedDrawsTest {
    /** How often each set of places was drawn, by its bits. */
    private static int[] counted(int places, int chosen, boolean mayBeSeparated, int draws) {
        double[] powers = new double[places];
        for (int i = 0; i < places; i++) {
            powers[i] = 1 << i;
        }
        double[] sums = new double[draws];
        double[] overlaps = new double[draws];
        new MaskedDraws(powers, powers, chosen, mayBeSeparated).fill(new SplittableRandom(17), sums, overlaps);
        int[] count = new int[1 << places];
        for (int i = 0; i < draws; i++) {
            count[(int) sums[i]]++;
            assertEquals(sums[i], overlaps[i]);
        }
        return count;
    }

    /** Chi-square over all sets allowed: C(9, 4) = 126 and C(5, 2) - 2 = 8; 99.9 % points of 125 and 7 df by R 4.2.2 qchisq. */
    @ParameterizedTest
    @CsvSource({"9, 4, true, 126, 179.604", "5, 2, false, 8, 24.322"})
    void everySetIsEquallyLikely(int places, int chosen, boolean mayBeSeparated, int sets, double largest) {
        int each = 5000;
        int[] count = counted(places, chosen, mayBeSeparated, each * sets);
        double chiSquare = 0;
        int drawn = 0;
        for (int set = 0; set < count.length; set++) {
            if (count[set] > 0) {
                assertEquals(chosen, Integer.bitCount(set));
                drawn++;
                chiSquare += (count[set] - (double) each) * (count[set] - each) / each;
            }
        }
        assertEquals(sets, drawn);
        assertTrue(chiSquare < largest, "chi-square " + chiSquare);
    }

    /** Sum of k of n values drawn without replacement: variance k (n - k) / (n (n - 1)) times the sum of squares about the mean (W. G. Cochran, Sampling Techniques). */
    @ParameterizedTest
    @CsvSource({"64, 32", "70, 33", "129, 60", "1000, 560"})
    void sumsVaryAsThoseOfDrawsWithoutReplacement(int places, int chosen) {
        double[] values = new SplittableRandom(places).doubles(places).map(u -> 100 + u * u).toArray();
        double mean = Arrays.stream(values).average().orElseThrow();
        double squares = Arrays.stream(values).map(v -> (v - mean) * (v - mean)).sum();
        double[] ones = new double[places];
        Arrays.fill(ones, 1);
        int draws = 40_000;
        double[] sums = new double[draws];
        double[] counts = new double[draws];
        new MaskedDraws(values, ones, chosen, true).fill(new SplittableRandom(4), sums, counts);
        assertTrue(Arrays.stream(counts).allMatch(count -> count == chosen));
        double variance = chosen * (double) (places - chosen) / (places * (places - 1.0)) * squares;
        double average = Arrays.stream(sums).average().orElseThrow();
        double seen = Arrays.stream(sums).map(s -> (s - chosen * mean) * (s - chosen * mean)).sum() / draws;
        assertEquals(chosen * mean, average, 4 * Math.sqrt(variance / draws));
        assertEquals(1, seen / variance, 4 * Math.sqrt(2.0 / draws)); // of a normal sum; wrong once in 16,000 seeds
    }

    /**
     * Passes and failures: the orders give the hypergeometric distribution. 40 of 120 trials pass, 26 of them among the 60 changed; 300 of 2000, 160 of
     * them among 1004. Two-sided p by R 4.2.2, dhyper summed over all splits at least as uneven.
     */
    @ParameterizedTest
    @CsvSource({"120, 60, 40, 26, 0.032511753497897", "2000, 1004, 300, 160, 0.25966499902"})
    void thePOfPassesAndFailuresIsHypergeometric(int trials, int changed, int passes, int ofChanged, double expected) {
        double[] scores = new double[trials];
        boolean[] against = new boolean[trials];
        for (int i = 0; i < trials; i++) {
            against[i] = i < changed;
            scores[i] = i < ofChanged || i >= changed && i < changed + passes - ofChanged ? 1 : 0;
        }
        int draws = 100_000;
        assertTrue(MaskedDraws.suits(trials, changed));
        RandomisationResult result = RandomisationTest.ofGroups(scores, against, Restriction.NONE).test(new Effort(1, draws), new SplittableRandom(6));
        assertEquals(expected, result.p(), 4 * Math.sqrt(expected * (1 - expected) / draws) + 1.0 / draws);
        assertEquals(result, RandomisationTest.ofGroups(scores, against, Restriction.NONE).test(new Effort(1, draws), new SplittableRandom(6)), "the same seed");
    }

    @Test
    void fewOfManyPlacesAreDrawnBySwapping() {
        assertTrue(MaskedDraws.suits(1000, 380) && MaskedDraws.suits(1000, 620));
        assertTrue(!MaskedDraws.suits(1000, 370) && !MaskedDraws.suits(1000, 630));
    }
}
