package coldproof.stats.sequential;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.stats.Close;
import coldproof.stats.Tail;
import coldproof.stats.model.Estimate;
import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class StagewiseInferenceTest {
    private static final double MANY = 1e9; // degrees of freedom: noise as good as known

    @Test
    void stoppingAtTheFirstLookReportsThePlainTInterval() {
        SequentialBoundary boundary = SequentialBoundary.spending(Spending.POCOCK_LIKE, 0.05, Tail.TWO, 0.5);
        Estimate estimate = Estimate.of(0.05, 0.012, 6);
        StagewiseInference found = StagewiseInference.of(boundary, estimate, 0.95);
        Close.relative(estimate.p(), found.p(), 1e-9, "p");
        Close.relative(0.05, found.median(), 1e-9, "median");
        Close.relative(estimate.interval(0.95).low(), found.interval().low(), 1e-9, "low");
        Close.relative(estimate.interval(0.95).high(), found.interval().high(), 1e-9, "high");
    }

    @Test
    void aResultExactlyOnTheLastBoundHasAPAtWhatIsSpent() {
        SequentialBoundary boundary = SequentialBoundary.spending(Spending.OBRIEN_FLEMING_LIKE, 0.05, Tail.TWO, 0.3, 0.6, 1);
        StagewiseInference found = StagewiseInference.of(boundary, Estimate.of(boundary.z(2), 1, MANY), 0.95);
        Close.relative(0.05, found.p(), 1e-7, "p"); // MANY is not infinity
        assertEquals(0, found.interval().low(), 1e-6);
    }

    /**
     * Simulated, seed fixed: 2,000 studies with known noise and a true drift of 2. The tail probability of the result under the truth is uniform, so half of
     * the medians lie above it and 95 % of the intervals hold it.
     */
    @Test
    void theEstimateIsMedianUnbiasedAndTheIntervalCoversThroughEarlyStops() {
        double[] fractions = {0.4, 0.7, 1};
        SequentialBoundary all = SequentialBoundary.spending(Spending.POCOCK_LIKE, 0.05, Tail.TWO, fractions);
        SplittableRandom random = new SplittableRandom(99);
        int studies = 2000;
        int above = 0;
        int covered = 0;
        for (int study = 0; study < studies; study++) {
            double score = 0;
            int k = 0;
            double time = 0;
            for (; k < 3; k++) {
                double step = fractions[k] - time;
                score += 2 * step + Math.sqrt(step) * random.nextGaussian();
                time = fractions[k];
                if (k == 2 || Math.abs(score / Math.sqrt(time)) >= all.z(k)) {
                    break;
                }
            }
            double[] taken = Arrays.copyOf(fractions, k + 1);
            SequentialBoundary boundary = SequentialBoundary.of(IntStream.rangeClosed(0, k).mapToDouble(all::z).toArray(), Tail.TWO, taken);
            double tail = StagewiseInference.atLeastAsFarUp(boundary, score / Math.sqrt(time), 2);
            above += tail < 0.5 ? 1 : 0;
            covered += tail > 0.025 && tail < 0.975 ? 1 : 0;
            if (study < 20) {
                StagewiseInference found = StagewiseInference.of(boundary, Estimate.of(score / time, 1 / Math.sqrt(time), MANY), 0.95);
                assertEquals(tail < 0.5, found.median() > 2);
                assertEquals(tail > 0.025 && tail < 0.975, found.interval().contains(2));
            }
        }
        double fourErrors = 4 * Math.sqrt(0.25 / studies);
        assertEquals(0.5, above / (double) studies, fourErrors);
        assertEquals(0.95, covered / (double) studies, 4 * Math.sqrt(0.95 * 0.05 / studies));
    }

    @Test
    void anEarlyStopPullsTheEstimateBack() {
        SequentialBoundary boundary = SequentialBoundary.spending(Spending.OBRIEN_FLEMING_LIKE, 0.05, Tail.TWO, 0.5, 1);
        StagewiseInference found = StagewiseInference.of(boundary, Estimate.of(0.03, 0.01, 12), 0.95);
        assertTrue(found.median() < 0.03 && found.median() > 0.02, "median " + found.median());
    }

    /**
     * Two changes against one baseline, correlation 1/2, looks at half and all, each stopped by its own bounds at half the error rate: both intervals
     * at 97.5 % hold together in at least 95 % (Bonferroni's inequality). 1,500 studies; the bound is three standard errors below.
     */
    @Test
    void intervalsOfSeveralChangesHoldTogether() {
        SplittableRandom random = new SplittableRandom(20260114);
        SequentialBoundary bounds = SequentialBoundary.spending(Spending.OBRIEN_FLEMING_LIKE, 0.025, Tail.TWO, 0.5, 1);
        double[] drift = {2.2, 0.5}; // of the whole study's deviate
        int studies = 1_500;
        int together = 0;
        for (int study = 0; study < studies; study++) {
            double[] halves = {random.nextGaussian(), random.nextGaussian()};
            boolean both = true;
            for (double change : drift) {
                double early = (halves[0] + random.nextGaussian()) / Math.sqrt(2) + change * Math.sqrt(0.5);
                double late = (halves[1] + random.nextGaussian()) / Math.sqrt(2) + change * Math.sqrt(0.5);
                boolean stops = Math.abs(early) >= bounds.z(0);
                double z = stops ? early : (early + late) / Math.sqrt(2);
                SequentialBoundary until = stops ? SequentialBoundary.of(new double[] {bounds.z(0)}, Tail.TWO, 0.5) : bounds;
                double error = stops ? Math.sqrt(2) : 1; // the whole study's standard error is the unit, so the true change is the drift
                StagewiseInference found = StagewiseInference.of(until, Estimate.of(z * error, error, 1e7), 0.975);
                both &= found.interval().low() <= change && change <= found.interval().high();
            }
            together += both ? 1 : 0;
        }
        double share = together / (double) studies;
        assertTrue(share > 0.95 - 3 * Math.sqrt(0.95 * 0.05 / studies), "both hold in " + share);
        assertTrue(share < 0.98, "and are not needlessly wide: " + share);
    }
}
