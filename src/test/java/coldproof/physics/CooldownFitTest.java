package coldproof.physics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.physics.CooldownFit.Unusable;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;

class CooldownFitTest {
    private static double[] column(String file, int index) {
        List<String[]> rows = Tables.rows(file);
        return rows.stream().skip(1).mapToDouble(row -> Double.parseDouble(row[index])).toArray();
    }

    /** Nonlinear least squares of R (nls) on the same readings; script beside the table. */
    @Test
    void agreesWithNonlinearLeastSquaresOfAnotherProgram() {
        double[] seconds = column("cool-down.csv", 0);
        double[] celsius = column("cool-down.csv", 1);
        List<String[]> expected = Tables.rows("cool-down-fit.csv");
        for (String[] row : expected.subList(1, expected.size())) {
            OptionalDouble surroundings = row[0].equals("given") ? OptionalDouble.of(-5) : OptionalDouble.empty();
            ExponentialWindow window = ExponentialWindow.of(seconds, celsius, celsius[0], celsius[celsius.length - 1], 0.1, 0.9);
            ExponentialWindow.Fit fit = window.fit(surroundings);
            assertEquals(Double.parseDouble(row[1]), fit.tau(), 1e-5 * fit.tau(), row[0]); // a flat minimum: half the digits of a double
            assertEquals(Double.parseDouble(row[3]), fit.surroundings(), 1e-4, row[0]);
            assertEquals(Double.parseDouble(row[4]), fit.rSquared(), 1e-9, row[0]);
            assertEquals(Integer.parseInt(row[5]), window.size());
            double nls = Double.parseDouble(row[2]);
            assertTrue(fit.standardError() >= nls * 0.9999, row[0] + ": autocorrelation may widen, never narrow");
            assertTrue(fit.standardError() <= nls * 1.5, row[0]);
        }
    }

    private static double[] times(int n, double step) {
        double[] seconds = new double[n];
        for (int i = 0; i < n; i++) {
            seconds[i] = i * step;
        }
        return seconds;
    }

    private static double[] curve(double[] seconds, double surroundings, double tau, double noise, Random random) {
        double[] celsius = new double[seconds.length];
        for (int i = 0; i < seconds.length; i++) {
            celsius[i] = surroundings + 26 * Math.exp(-seconds[i] / tau) + noise * random.nextGaussian();
        }
        return celsius;
    }

    /** Coverage factor 2 means about 95 %; 400 simulated records, bound 3 standard errors of that share (3.3 %). */
    @Test
    void theIntervalHoldsTheTruthAsOftenAsItSays() {
        Random random = new Random(20260114);
        double[] seconds = times(180, 30);
        int held = 0;
        int runs = 400;
        for (int i = 0; i < runs; i++) {
            CooldownFit fit = CooldownFit.fit(seconds, curve(seconds, -5, 1500, 0.15, random), OptionalDouble.of(-5)).fit().orElseThrow();
            TimeConstant tau = fit.timeConstant();
            held += tau.lowSeconds() <= 1500 && 1500 <= tau.highSeconds() ? 1 : 0;
        }
        assertEquals(0.95, held / (double) runs, 0.033);
    }

    @Test
    void aSensorThatCountsWholeDegreesStillGivesTheTimeConstant() {
        double[] seconds = times(720, 10);
        double[] celsius = curve(seconds, -5, 1500, 0, new Random(1));
        for (int i = 0; i < celsius.length; i++) {
            celsius[i] = Math.rint(celsius[i]);
        }
        TimeConstant tau = CooldownFit.fit(seconds, celsius, OptionalDouble.of(-5)).fit().orElseThrow().timeConstant();
        assertEquals(1500, tau.likelySeconds(), 45); // 3 %: steps of 1 K over a span of 26 K
        assertTrue(tau.lowSeconds() < 1500 && 1500 < tau.highSeconds());
    }

    /** A third of the heat in a body of 600 s and two thirds in one of 3000 s: the slow one decides. */
    @Test
    void aSlowerSecondBodyIsSeenAndUsed() {
        double[] seconds = times(1200, 10);
        double[] celsius = new double[seconds.length];
        Random random = new Random(7);
        for (int i = 0; i < seconds.length; i++) {
            celsius[i] = -5 + 9 * Math.exp(-seconds[i] / 600) + 17 * Math.exp(-seconds[i] / 3000) + 0.05 * random.nextGaussian();
        }
        CooldownFit fit = CooldownFit.fit(seconds, celsius, OptionalDouble.of(-5)).fit().orElseThrow();
        assertTrue(fit.slowerBodySeen());
        assertEquals(3000, fit.timeConstant().likelySeconds(), 200);
    }

    @Test
    void oneBodyShowsNoSecond() {
        double[] seconds = times(360, 15);
        double[] celsius = curve(seconds, -5, 1200, 0.05, new Random(3));
        CooldownFit fit = CooldownFit.fit(seconds, celsius, OptionalDouble.of(-5)).fit().orElseThrow();
        assertTrue(!fit.slowerBodySeen());
    }

    @Test
    void aWarmUpIsFittedLikeACoolDown() {
        double[] seconds = times(200, 20);
        double[] celsius = new double[seconds.length];
        for (int i = 0; i < seconds.length; i++) {
            celsius[i] = 21 - 25 * Math.exp(-seconds[i] / 1000);
        }
        CooldownFit fit = CooldownFit.fit(seconds, celsius, OptionalDouble.empty()).fit().orElseThrow();
        assertEquals(1000, fit.timeConstant().likelySeconds(), 0.1);
        assertEquals(21, fit.surroundingsCelsius(), 0.01);
    }

    @Test
    void recordsThatCannotCarryItAreRefusedWithTheReason() {
        double[] seconds = times(100, 10);
        double[] flat = new double[100];
        Arrays.fill(flat, 20);
        assertEquals(Unusable.SPAN_TOO_SMALL, unusable(seconds, flat, OptionalDouble.empty()));
        double[] straight = new double[100];
        for (int i = 0; i < 100; i++) {
            straight[i] = 20 - 0.1 * i;
        }
        assertEquals(Unusable.TOO_SHORT, unusable(seconds, straight, OptionalDouble.empty()));
        double[] jumpy = new double[100];
        for (int i = 0; i < 100; i++) {
            jumpy[i] = 20 - 0.2 * i + (i % 10 < 5 ? 4 : -4);
        }
        assertEquals(Unusable.NO_EXPONENTIAL, unusable(seconds, jumpy, OptionalDouble.of(-10)));
        assertEquals(Unusable.TOO_FEW_POINTS, unusable(new double[] {0, 1}, new double[] {20, 0}, OptionalDouble.empty()));
    }

    @Test
    void readingsOutOfOrderAreAProgrammersMistake() {
        double[] two = {1, 2};
        assertThrows(IllegalArgumentException.class, () -> CooldownFit.fit(new double[] {0, 0}, two, OptionalDouble.empty()));
        assertThrows(IllegalArgumentException.class, () -> CooldownFit.fit(new double[] {0}, two, OptionalDouble.empty()));
        assertThrows(IllegalArgumentException.class, () -> CooldownFit.fit(two, new double[] {1, Double.NaN}, OptionalDouble.empty()));
    }

    private static Unusable unusable(double[] seconds, double[] celsius, OptionalDouble surroundings) {
        return CooldownFit.fit(seconds, celsius, surroundings).unusable().orElseThrow();
    }
}
