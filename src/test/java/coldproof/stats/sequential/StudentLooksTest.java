package coldproof.stats.sequential;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.stats.Tail;
import coldproof.stats.interval.Moments;
import coldproof.stats.model.TwoGroups;
import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StudentLooksTest {
    /** False alarms of two-group t tests at looks, scores drawn one by one: nothing of the simulation under test but its p values. */
    private static double falseAlarms(double[] p, int[] baseline, int[] against, int studies, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        int alarms = 0;
        int last = p.length - 1;
        for (int study = 0; study < studies; study++) {
            double[] a = new double[baseline[last]];
            double[] b = new double[against[last]];
            Arrays.setAll(a, i -> random.nextGaussian());
            Arrays.setAll(b, i -> random.nextGaussian());
            for (int look = 0; look <= last; look++) {
                if (TwoGroups.pooled(Arrays.copyOf(a, baseline[look]), Arrays.copyOf(b, against[look])).p() <= p[look]) {
                    alarms++;
                    break;
                }
            }
        }
        return alarms / (double) studies;
    }

    private static double[] fractions(int[] baseline, int[] against) {
        double[] information = new double[baseline.length];
        Arrays.setAll(information, k -> 1 / (1.0 / baseline[k] + 1.0 / against[k]));
        double all = information[information.length - 1];
        return Arrays.stream(information).map(each -> each / all).toArray();
    }

    private static double[] degrees(int[] baseline, int[] against) {
        double[] degrees = new double[baseline.length];
        Arrays.setAll(degrees, k -> baseline[k] + against[k] - 2);
        return degrees;
    }

    /** 40,000 studies: standard error 0.11 %. The nominal p values of the normal bounds give 5.5 %, 5.3 % and 5.2 % here. */
    @ParameterizedTest
    @CsvSource({"POCOCK_LIKE, 2 4 6, 2 4 6", "OBRIEN_FLEMING_LIKE, 2 4 6, 2 4 6", "OBRIEN_FLEMING_LIKE, 2 4, 2 3", "POCOCK_LIKE, 2 3 5, 3 4 5"})
    void smallStudiesKeepTheirFalseAlarmRate(Spending spending, String baselineCounts, String againstCounts) {
        int[] baseline = Arrays.stream(baselineCounts.split(" ")).mapToInt(Integer::parseInt).toArray();
        int[] against = Arrays.stream(againstCounts.split(" ")).mapToInt(Integer::parseInt).toArray();
        SequentialBoundary boundary = SequentialBoundary.spending(spending, 0.05, Tail.TWO, fractions(baseline, against));
        double[] p = StudentLooks.nominalP(boundary, degrees(baseline, against), new SplittableRandom(1));
        assertEquals(0.05, falseAlarms(p, baseline, against, 40_000, 2), 0.0033, Arrays.toString(p)); // three standard errors
    }

    @Test
    void aLooksBoundDoesNotWaitForLooksToCome() {
        SequentialBoundary all = SequentialBoundary.spending(Spending.POCOCK_LIKE, 0.05, Tail.TWO, 0.4, 0.7, 1);
        SequentialBoundary now = SequentialBoundary.spending(Spending.POCOCK_LIKE, 0.05, Tail.TWO, 0.4, 0.7);
        double[] later = StudentLooks.nominalP(all, new double[] {4, 8, 12}, new SplittableRandom(3));
        double[] earlier = StudentLooks.nominalP(now, new double[] {4, 8}, new SplittableRandom(3));
        assertArrayEquals(earlier, Arrays.copyOf(later, 2), 1e-15);
    }

    @Test
    void manyDegreesOfFreedomLeaveTheNormalBounds() {
        SequentialBoundary boundary = SequentialBoundary.spending(Spending.POCOCK_LIKE, 0.05, Tail.TWO, 0.5, 1);
        double[] p = StudentLooks.nominalP(boundary, new double[] {150, 302}, new SplittableRandom(4));
        assertEquals(boundary.nominalP(1), p[1], 0.0012); // little is left to correct
        assertEquals(boundary.nominalP(0), p[0], 0);
    }

    @Test
    void drawsHaveTheMomentsOfChiSquare() {
        for (double df : new double[] {0.4, 1, 5, 37.5}) {
            ChiSquareDraws draws = new ChiSquareDraws(df);
            SplittableRandom random = new SplittableRandom(8);
            double[] drawn = new double[100_000];
            Arrays.setAll(drawn, i -> draws.next(random));
            Moments moments = Moments.of(drawn);
            assertEquals(df, moments.mean(), 4 * Math.sqrt(2 * df / drawn.length), "df " + df);
            assertEquals(2 * df, moments.variance(), 0.06 * 2 * df, "df " + df); // four standard errors where kurtosis is largest
        }
        assertTrue(new ChiSquareDraws(0).next(new SplittableRandom(1)) == 0);
    }
}
