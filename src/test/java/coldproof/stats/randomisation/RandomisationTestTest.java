package coldproof.stats.randomisation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.stats.DataTable;
import coldproof.stats.interval.ConfidenceInterval;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.random.RandomGenerator;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

class RandomisationTestTest {
    private static final RandomGenerator UNUSED = () -> {
        throw new AssertionError("an exact count draws nothing");
    };
    private static final Effort EXACT = Effort.STANDARD;

    @TestFactory
    Stream<DynamicTest> everyExactCountAgreesWithFullEnumerationElsewhere() {
        return DataTable.read("tests-expected.csv").rows().stream().filter(row -> row.get("method").startsWith("permutation"))
                .filter(row -> !row.get("quantity").matches("p_two_sided_(scipy|coin)"))
                .map(row -> DynamicTest.dynamicTest(row.get("dataset") + " " + row.get("method") + " " + row.get("quantity"), () -> check(row)));
    }

    private static void check(Map<String, String> row) {
        RandomisationTest test = test(row.get("dataset"), row.get("method"));
        RandomisationResult result = test.test(EXACT, UNUSED);
        double value = Double.parseDouble(row.get("value"));
        assertEquals(value, quantity(result, row.get("quantity")), 1e-12 * Math.max(1, Math.abs(value)));
        assertTrue(result.exact());
    }

    private static double quantity(RandomisationResult result, String quantity) {
        switch (quantity) {
            case "p_two_sided":
                return result.p();
            case "p_greater":
                return result.pGreater();
            case "p_less":
                return result.pLess();
            case "assignments":
                return result.assignments();
            case "as_extreme_two_sided":
                return result.p() * result.assignments();
            case "smallest_p_two_sided":
                return result.smallestP();
            case "estimate_pct":
                return 100 * Math.expm1(result.statistic());
            default:
                throw new IllegalArgumentException(quantity);
        }
    }

    private static RandomisationTest test(String dataset, String method) {
        boolean log = method.endsWith("_log");
        if (method.startsWith("permutation_pairs")) {
            DataTable data = DataTable.read("paired-data.csv").where("dataset", dataset);
            double[] first = values(data.numbers("A"), log);
            double[] second = values(data.numbers("B"), log);
            for (int i = 0; i < first.length; i++) {
                second[i] -= first[i];
            }
            return RandomisationTest.ofPairs(second);
        }
        if (method.startsWith("permutation_within")) {
            DataTable data = DataTable.read("within-session-data.csv");
            return RandomisationTest.withinSessions(values(data.numbers("value"), log), data.codes("session"), against(data), Restriction.NONE);
        }
        if (method.startsWith("permutation_sessions")) {
            DataTable data = DataTable.read("session-data.csv");
            double[] values = values(data.numbers("value"), log);
            int[] session = data.codes("session");
            double[] means = new double[8];
            boolean[] against = new boolean[8];
            for (int i = 0; i < values.length; i++) {
                means[session[i]] += values[i] / 3;
                against[session[i]] = against(data)[i];
            }
            return RandomisationTest.ofGroups(means, against, Restriction.NONE);
        }
        DataTable data = DataTable.read("two-sample-data.csv").where("dataset", dataset);
        return RandomisationTest.ofGroups(values(data.numbers("value"), log), against(data), Restriction.NONE);
    }

    private static double[] values(double[] raw, boolean log) {
        return log ? Arrays.stream(raw).map(Math::log).toArray() : raw;
    }

    private static boolean[] against(DataTable data) {
        String[] levels = data.texts("level");
        boolean[] against = new boolean[levels.length];
        for (int i = 0; i < against.length; i++) {
            against[i] = levels[i].equals("B");
        }
        return against;
    }

    private static double[] noise(RandomGenerator random, int n) {
        double[] values = new double[n];
        for (int i = 0; i < n; i++) {
            values[i] = random.nextGaussian();
        }
        return values;
    }

    private static boolean[] alternating(int n) {
        boolean[] flags = new boolean[n];
        for (int i = 0; i < n; i++) {
            flags[i] = i % 2 == 1;
        }
        return flags;
    }

    /** The definition itself, choice by choice. */
    private static double bruteForceP(double[] values, boolean[] drawn, Restriction restriction, double shift) {
        double[] shifted = values.clone();
        int against = 0;
        for (int i = 0; i < shifted.length; i++) {
            shifted[i] -= drawn[i] ? shift : 0;
            against += drawn[i] ? 1 : 0;
        }
        double observed = Math.abs(difference(shifted, drawn));
        int total = 0;
        int extreme = 0;
        for (int mask = 0; mask < 1 << values.length; mask++) {
            boolean[] flags = new boolean[values.length];
            for (int i = 0; i < flags.length; i++) {
                flags[i] = (mask >> i & 1) == 1;
            }
            if (Integer.bitCount(mask) == against && restriction.allows(flags)) {
                total++;
                extreme += Math.abs(difference(shifted, flags)) >= observed - 1e-9 ? 1 : 0;
            }
        }
        return (double) extreme / total;
    }

    private static double difference(double[] values, boolean[] flags) {
        double[] sum = new double[2];
        int[] count = new int[2];
        for (int i = 0; i < values.length; i++) {
            sum[flags[i] ? 1 : 0] += values[i];
            count[flags[i] ? 1 : 0]++;
        }
        return sum[1] / count[1] - sum[0] / count[0];
    }

    @Test
    void everyRestrictionCountsWhatTheDefinitionCounts() {
        RandomGenerator random = new SplittableRandom(1);
        Restriction balancedPlaces = flags -> {
            double sum = 0;
            for (int i = 0; i < flags.length; i++) {
                sum += flags[i] ? i : 0;
            }
            return Math.abs(sum / 5 - 4.5) < 1.5;
        };
        for (Restriction restriction : List.of(Restriction.NONE, Restriction.NOT_SEPARATED, balancedPlaces)) {
            for (int repeat = 0; repeat < 5; repeat++) {
                double[] values = noise(random, 10);
                boolean[] drawn = alternating(10);
                RandomisationTest test = RandomisationTest.ofGroups(values, drawn, restriction);
                double expected = bruteForceP(values, drawn, restriction, 0);
                assertEquals(expected, test.test(EXACT, UNUSED).p(), 1e-15, () -> "values " + Arrays.toString(values));
            }
        }
    }

    @Test
    void theNumberOfAssignmentsIsToldBeforehand() {
        assertEquals(new RandomisationScheme(70, 2.0 / 70, true), RandomisationScheme.groups(4, 4));
        assertEquals(new RandomisationScheme(68, 2.0 / 68, true), RandomisationScheme.groups(4, 4, Restriction.NOT_SEPARATED));
        assertEquals(new RandomisationScheme(35, 1.0 / 35, true), RandomisationScheme.groups(4, 3));
        assertEquals(new RandomisationScheme(64, 2.0 / 64, true), RandomisationScheme.pairs(6));
        assertEquals(new RandomisationScheme(20, 2.0 / 20, true), RandomisationScheme.counterbalancedPairs(3, 3));
        assertEquals(new RandomisationScheme(216, 2.0 / 216, true),
                RandomisationScheme.within(new int[] {2, 2, 2}, new int[] {2, 2, 2}, Restriction.NONE));
        assertEquals(new RandomisationScheme(9, 1.0 / 9, true),
                RandomisationScheme.within(new int[] {1, 2}, new int[] {2, 1}, Restriction.NONE));
        boolean[] abba = {false, true, true, false};
        boolean[] baab = {true, false, false, true};
        assertEquals(new RandomisationScheme(8, 2.0 / 8, true),
                RandomisationScheme.sequences(List.of(List.of(abba, baab), List.of(abba, baab), List.of(abba, baab))));
        assertEquals(new RandomisationScheme(2, 1.0 / 2, true), RandomisationScheme.sequences(List.of(List.of(abba), List.of(abba, baab))));
        Restriction noLongRuns = flags -> flags[0] != flags[1];
        assertEquals(new RandomisationScheme(4, 0.5, true), RandomisationScheme.groups(2, 2, noLongRuns));
    }

    /** Counting: k + k whole sessions reach 2 / C(2k, k), m pairs 2 / 2^m. */
    @Test
    void theSmallestPIsThatOfCounting() {
        double[] sessions = {1.0 / 3, 0.1, 2.0 / 70, 2.0 / 252, 2.0 / 924, 2.0 / 3432};
        for (int k = 2; k <= 7; k++) {
            assertEquals(sessions[k - 2], RandomisationScheme.groups(k, k).smallestP(), 1e-15);
            double[] values = new double[2 * k];
            for (int i = 0; i < values.length; i++) {
                values[i] = (i % 2) * 10 + i * 0.01;
            }
            assertEquals(sessions[k - 2], RandomisationTest.ofGroups(values, alternating(2 * k), Restriction.NONE).test(EXACT, UNUSED).p(), 1e-15);
        }
    }

    @Test
    void counterbalancedSequencesAgreeWithTheDefinition() {
        RandomGenerator random = new SplittableRandom(2);
        boolean[] abba = {false, true, true, false};
        boolean[] baab = {true, false, false, true};
        double[] values = noise(random, 12);
        boolean[] drawn = new boolean[12];
        List<List<boolean[]>> allowed = new ArrayList<>();
        int[] session = new int[12];
        double[] differences = new double[3];
        for (int s = 0; s < 3; s++) {
            allowed.add(List.of(abba, baab));
            for (int i = 0; i < 4; i++) {
                session[4 * s + i] = s;
                drawn[4 * s + i] = s == 1 ? baab[i] : abba[i];
            }
            differences[s] = difference(Arrays.copyOfRange(values, 4 * s, 4 * s + 4), Arrays.copyOfRange(drawn, 4 * s, 4 * s + 4));
        }
        // with two mirrored sequences a session, drawing another one changes the sign of its difference
        double asPairs = RandomisationTest.ofPairs(differences).test(EXACT, UNUSED).p();
        assertEquals(asPairs, RandomisationTest.ofSequences(values, session, drawn, allowed).test(EXACT, UNUSED).p(), 1e-15);
    }

    @Test
    void counterbalancedPairsAgreeWithListingTheirSchedules() {
        RandomGenerator random = new SplittableRandom(3);
        double[] values = noise(random, 12);
        boolean[] baselineFirst = {true, false, false, true, true, false};
        boolean[] drawn = new boolean[12];
        double[] differences = new double[6];
        for (int i = 0; i < 6; i++) {
            drawn[2 * i] = !baselineFirst[i];
            drawn[2 * i + 1] = baselineFirst[i];
            differences[i] = baselineFirst[i] ? values[2 * i + 1] - values[2 * i] : values[2 * i] - values[2 * i + 1];
        }
        List<boolean[]> schedules = new ArrayList<>();
        for (int mask = 0; mask < 64; mask++) {
            if (Integer.bitCount(mask) == 3) {
                boolean[] schedule = new boolean[12];
                for (int i = 0; i < 6; i++) {
                    schedule[2 * i] = (mask >> i & 1) == 1;
                    schedule[2 * i + 1] = !schedule[2 * i];
                }
                schedules.add(schedule);
            }
        }
        RandomisationResult listed = RandomisationTest.ofSchedules(values, drawn, schedules).test(EXACT, UNUSED);
        RandomisationResult pairs = RandomisationTest.ofCounterbalancedPairs(differences, baselineFirst).test(EXACT, UNUSED);
        assertEquals(listed.p(), pairs.p(), 1e-15);
        assertEquals(listed.pGreater(), pairs.pGreater(), 1e-15);
        assertEquals(listed.statistic(), pairs.statistic(), 1e-12);
        assertEquals(20, pairs.assignments());
        ConfidenceInterval a = RandomisationTest.ofSchedules(values, drawn, schedules).interval(0.8, EXACT, UNUSED);
        ConfidenceInterval b = RandomisationTest.ofCounterbalancedPairs(differences, baselineFirst).interval(0.8, EXACT, UNUSED);
        assertEquals(a.low(), b.low(), 1e-9);
        assertEquals(a.high(), b.high(), 1e-9);
    }

    /** An end is where p passes 5 %: rejected a little beyond, kept a little inside, by the definition. */
    @Test
    void anIntervalHoldsTheDifferencesThatAreNotRejected() {
        RandomGenerator random = new SplittableRandom(4);
        for (int repeat = 0; repeat < 4; repeat++) {
            double[] values = noise(random, 9);
            boolean[] drawn = {true, false, false, true, true, false, false, true, false};
            ConfidenceInterval interval = RandomisationTest.ofGroups(values, drawn, Restriction.NONE).interval(0.95, EXACT, UNUSED);
            double small = 1e-7;
            for (double inside : new double[] {interval.low() + small, interval.high() - small}) {
                assertTrue(bruteForceP(values, drawn, Restriction.NONE, inside) > 0.05);
            }
            for (double outside : new double[] {interval.low() - small, interval.high() + small}) {
                assertTrue(bruteForceP(values, drawn, Restriction.NONE, outside) <= 0.05);
            }
        }
    }

    @Test
    void anIntervalIsUnboundedWhereNothingCanBeRejected() {
        double[] values = {1, 2, 3, 9, 8, 7};
        boolean[] drawn = {false, true, false, true, false, true};
        ConfidenceInterval interval = RandomisationTest.ofGroups(values, drawn, Restriction.NONE).interval(0.95, EXACT, UNUSED);
        assertEquals(Double.NEGATIVE_INFINITY, interval.low());
        assertEquals(Double.POSITIVE_INFINITY, interval.high());
        assertTrue(RandomisationTest.ofGroups(values, drawn, Restriction.NONE).interval(0.8, EXACT, UNUSED).isBounded());
    }

    @Test
    void anIntervalOfSessionsAndPairsMatchesTheTest() {
        DataTable data = DataTable.read("within-session-data.csv");
        double[] values = values(data.numbers("value"), true);
        int[] session = data.codes("session");
        ConfidenceInterval interval = RandomisationTest.withinSessions(values, session, against(data), Restriction.NONE)
                .interval(0.95, EXACT, UNUSED);
        for (double[] endAndSide : new double[][] {{interval.low(), -1}, {interval.high(), 1}}) {
            for (double step : new double[] {-1e-7, 1e-7}) {
                double[] shifted = values.clone();
                for (int i = 0; i < shifted.length; i++) {
                    shifted[i] -= against(data)[i] ? endAndSide[0] + step : 0;
                }
                double p = RandomisationTest.withinSessions(shifted, session, against(data), Restriction.NONE).test(EXACT, UNUSED).p();
                assertEquals(step * endAndSide[1] < 0, p > 0.05, "p " + p);
            }
        }
    }

    /** A shift of the other level moves the interval and nothing else. */
    @Test
    void aShiftMovesTheInterval() {
        double[] values = noise(new SplittableRandom(5), 16);
        boolean[] drawn = alternating(16);
        double[] shifted = values.clone();
        for (int i = 0; i < 16; i++) {
            shifted[i] += drawn[i] ? 3 : 0;
        }
        ConfidenceInterval before = RandomisationTest.ofGroups(values, drawn, Restriction.NONE).interval(0.9, EXACT, UNUSED);
        ConfidenceInterval after = RandomisationTest.ofGroups(shifted, drawn, Restriction.NONE).interval(0.9, EXACT, UNUSED);
        assertEquals(before.low() + 3, after.low(), 1e-9);
        assertEquals(before.high() + 3, after.high(), 1e-9);
    }

    /**
     * Random draws against the exact count, for each way of drawing; 400,000 draws have a standard error of sqrt(p (1 - p) / m), bound 4.5 of
     * them; interval ends from 200,000 draws within 2 % of the width.
     */
    @Test
    void randomDrawsAgreeWithCounting() {
        RandomGenerator random = new SplittableRandom(6);
        Effort drawn = new Effort(1, 400_000);
        double[] values = noise(random, 22);
        boolean[] flags = new boolean[22];
        for (int i = 0; i < 22; i++) {
            flags[i] = i % 5 < 2;
            values[i] += flags[i] ? 0.8 : 0;
        }
        int[] session = new int[22];
        for (int i = 0; i < 22; i++) {
            session[i] = i / 5;
        }
        session[20] = 3;
        session[21] = 3;
        List<RandomisationTest> tests = List.of(RandomisationTest.ofGroups(values, flags, Restriction.NONE),
                RandomisationTest.ofGroups(values, flags, Restriction.NOT_SEPARATED),
                RandomisationTest.ofPairs(Arrays.copyOf(values, 17)),
                RandomisationTest.ofCounterbalancedPairs(values, flags),
                RandomisationTest.withinSessions(values, session, flags, Restriction.NONE));
        for (RandomisationTest test : tests) {
            RandomisationResult exact = test.test(EXACT, UNUSED);
            RandomisationResult approximate = test.test(drawn, random);
            assertTrue(exact.exact());
            assertFalse(approximate.exact());
            assertEquals(400_000, approximate.resamples());
            double bound = 4.5 * Math.sqrt(exact.p() * (1 - exact.p()) / 400_000) + 3e-6;
            assertEquals(exact.p(), approximate.p(), bound);
            assertEquals(exact.pGreater(), approximate.pGreater(), bound);
            ConfidenceInterval counted = test.interval(0.9, EXACT, UNUSED);
            ConfidenceInterval fromDraws = test.interval(0.9, drawn, random);
            assertEquals(counted.low(), fromDraws.low(), 0.02 * counted.width());
            assertEquals(counted.high(), fromDraws.high(), 0.02 * counted.width());
        }
    }

    /** Every subset equally likely: chi-square over all C(8, 3) = 56 of them, 99.9 % point of 55 df about 93.2 (R 4.2.2 qchisq). */
    @Test
    void theTabledDrawIsUniformOverTheSubsets() {
        double[] powers = new double[8];
        for (int i = 0; i < 8; i++) {
            powers[i] = 1 << i;
        }
        int draws = 560_000;
        for (AssignmentSpace.Draws source : List.of(new ChunkedDraws(powers, powers, 3),
                new ShuffledDraws(powers, powers, 3, Restriction.NONE))) {
            double[] sums = new double[draws];
            double[] overlaps = new double[draws];
            source.fill(new SplittableRandom(7), sums, overlaps);
            int[] count = new int[256];
            for (int i = 0; i < draws; i++) {
                count[(int) sums[i]]++;
                assertEquals(sums[i], overlaps[i]);
            }
            double chiSquare = 0;
            int subsets = 0;
            for (int mask = 0; mask < 256; mask++) {
                if (Integer.bitCount(mask) == 3) {
                    subsets++;
                    chiSquare += (count[mask] - 10_000.0) * (count[mask] - 10_000.0) / 10_000;
                } else {
                    assertEquals(0, count[mask]);
                }
            }
            assertEquals(56, subsets);
            assertTrue(chiSquare < 93.2, "chi-square " + chiSquare);
        }
    }

    /** With 48 places the numbers are largest: each drawn set still holds exactly 24 places, each place in half of them. */
    @Test
    void theTabledDrawHoldsAtItsLargest() {
        double[] ones = new double[48];
        Arrays.fill(ones, 1);
        double[] last = new double[48];
        last[47] = 1;
        double[] sums = new double[200_000];
        double[] hits = new double[200_000];
        new ChunkedDraws(ones, last, 24).fill(new SplittableRandom(8), sums, hits);
        double share = 0;
        for (int i = 0; i < sums.length; i++) {
            assertEquals(24, sums[i]);
            share += hits[i] / sums.length;
        }
        assertEquals(0.5, share, 0.005); // standard error 0.0011
    }

    @Test
    void twentyAndTwentyAreCountedExactly() {
        double[] values = noise(new SplittableRandom(9), 40);
        boolean[] drawn = alternating(40);
        RandomisationResult exact = RandomisationTest.ofGroups(values, drawn, Restriction.NONE).test(EXACT, UNUSED);
        assertEquals(137_846_528_820.0, exact.assignments()); // C(40, 20)
        RandomisationResult approximate = RandomisationTest.ofGroups(values, drawn, Restriction.NONE)
                .test(new Effort(1, 1_000_000), new SplittableRandom(10));
        assertEquals(exact.p(), approximate.p(), 4.5 * Math.sqrt(exact.p() * (1 - exact.p()) / 1e6) + 2e-6);
    }

    @Test
    void equalScoresGiveNoEvidence() {
        assertEquals(1, RandomisationTest.ofGroups(new double[6], alternating(6), Restriction.NONE).test(EXACT, UNUSED).p());
    }

    @Test
    void whatCannotBeTestedIsRefused() {
        assertThrows(IllegalArgumentException.class,
                () -> RandomisationTest.ofGroups(new double[] {1, 2}, new boolean[] {true, true}, Restriction.NONE));
        assertThrows(IllegalArgumentException.class,
                () -> RandomisationTest.ofGroups(new double[] {1, Double.NaN}, new boolean[] {true, false}, Restriction.NONE));
        assertThrows(IllegalArgumentException.class, () -> RandomisationTest.ofGroups(new double[] {1, 2, 3, 4},
                new boolean[] {true, true, false, false}, Restriction.NOT_SEPARATED));
        assertThrows(IllegalArgumentException.class, () -> RandomisationTest.ofPairs(new double[0]));
    }
}
