package coldproof.stats.series;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.stats.DataTable;
import coldproof.stats.model.OneWayAnova;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** The looks at a series, against other programs and printed examples. */
class SeriesTest {
    private static final Set<String> METHODS =
            Set.of("lag1_autocorrelation", "mann_kendall", "von_neumann", "linear_drift", "shapiro", "generalised_esd");

    @TestFactory
    Stream<DynamicTest> agreesWithOtherPrograms() {
        return DataTable.read("tests-expected.csv").rows().stream()
                .filter(row -> METHODS.contains(row.get("method")) || row.get("method").startsWith("brown_forsythe")
                        || row.get("method").startsWith("shapiro_"))
                .filter(row -> !row.get("quantity").equals("p_normal_approx_low"))
                .map(row -> DynamicTest.dynamicTest(row.get("dataset") + " " + row.get("method") + " " + row.get("quantity"), () -> check(row)));
    }

    private static void check(Map<String, String> row) {
        double value = Double.parseDouble(row.get("value"));
        double actual = switch (row.get("method")) {
            case "generalised_esd" -> outlier(row);
            case "shapiro", "lag1_autocorrelation", "mann_kendall", "von_neumann", "linear_drift" -> series(row);
            default -> groups(row);
        };
        // the two programs themselves differ by up to 4e-9 in the p of Shapiro-Wilk: same algorithm, single-precision normal points
        double tolerance = row.get("method").startsWith("shapiro") ? 1e-7 : 1e-9;
        assertEquals(value, actual, tolerance * Math.max(Math.abs(value), 1e-3));
    }

    private static double series(Map<String, String> row) {
        double[] values = DataTable.read("series-data.csv").where("dataset", row.get("dataset")).numbers("value");
        MannKendall trend = MannKendall.test(values);
        Trend line = Trend.of(values);
        return switch (row.get("method") + " " + row.get("quantity")) {
            case "lag1_autocorrelation r1" -> Autocorrelation.of(values).lagOne();
            case "mann_kendall S" -> trend.s();
            case "mann_kendall var_S" -> trend.variance();
            case "mann_kendall z" -> trend.z();
            case "mann_kendall tau_b" -> trend.tau();
            case "mann_kendall p_exact" -> trend.p();
            case "mann_kendall p_normal" -> Math.min(1, 2 * coldproof.stats.distribution.Normal.survival(Math.abs(trend.z())));
            case "von_neumann ratio" -> neighbours(values).ratio();
            case "von_neumann p_exact_normal_low" -> neighbours(values).pLow();
            case "linear_drift slope" -> line.slope();
            case "linear_drift intercept" -> line.intercept();
            case "linear_drift slope_se" -> line.standardError();
            case "linear_drift p" -> line.p();
            case "shapiro W" -> ShapiroWilk.test(values).w();
            case "shapiro p" -> ShapiroWilk.test(values).p();
            default -> throw new IllegalArgumentException("no check for " + row);
        };
    }

    /** With only a mean taken out the steps of residuals are von Neumann's. */
    private static ResidualSteps neighbours(double[] values) {
        double[] ones = new double[values.length];
        Arrays.fill(ones, 1);
        ResidualSteps steps = ResidualSteps.of(values, new double[][] {ones, ones}, new int[values.length]);
        assertEquals(2, steps.expected(), 1e-9);
        return steps;
    }

    private static double outlier(Map<String, String> row) {
        DataTable data = DataTable.read("outlier-data.csv").where("dataset", row.get("dataset"));
        GeneralisedEsd found = GeneralisedEsd.of(data.numbers("value"), Integer.parseInt(data.texts("max_outliers")[0]), 0.05);
        if (row.get("quantity").equals("outliers")) {
            return found.outliers();
        }
        String[] parts = row.get("quantity").split(":");
        GeneralisedEsd.Step step = found.steps().get(Integer.parseInt(parts[0]) - 1);
        return switch (parts[1]) {
            case "R" -> step.r();
            case "lambda" -> step.lambda();
            case "removed_index" -> step.index() + 1;
            default -> throw new IllegalArgumentException("no check for " + row);
        };
    }

    private static double groups(Map<String, String> row) {
        boolean log = row.get("method").contains("_log");
        double[][] groups = new double[2][];
        for (int level = 0; level < 2; level++) {
            double[] raw = DataTable.read("two-sample-data.csv").where("dataset", row.get("dataset")).where("level", level == 0 ? "A" : "B").numbers("value");
            groups[level] = log ? Arrays.stream(raw).map(Math::log).toArray() : raw;
        }
        if (row.get("method").startsWith("brown_forsythe")) {
            BrownForsythe spread = BrownForsythe.test(List.of(groups));
            return row.get("quantity").equals("F") ? spread.f() : spread.p();
        }
        ShapiroWilk normal = ShapiroWilk.test(groups[row.get("method").endsWith("A") ? 0 : 1]);
        return row.get("quantity").equals("W") ? normal.w() : normal.p();
    }

    /** R 4.2.2 datasets::Nile; S, its variance and z computed in R by pairs and by Kendall's formula. */
    @Test
    void theFlowOfTheNileFalls() {
        double[] flow = DataTable.read("series/nile.csv").numbers("flow");
        MannKendall trend = MannKendall.test(flow);
        assertEquals(-1387, trend.s());
        assertEquals(112_728.3333, trend.variance(), 5e-5);
        assertEquals(-4.128066523, trend.z(), 5e-10);
        assertEquals(3.658263e-05, trend.p(), 5e-12);
        assertEquals(0.9776376562, neighbours(flow).ratio(), 5e-11);
        assertEquals(0.4984082, Autocorrelation.of(flow).lagOne(), 5e-8); // R acf
    }

    /** NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.10: W = 1.705910 there (rounded on the way), 1.705918 in R car::leveneTest. */
    @Test
    void theGearsOfTheHandbookAreEquallySpread() {
        DataTable gear = DataTable.read("series/gear.csv");
        List<double[]> batches = gear.distinct("batch").stream().map(batch -> gear.where("batch", batch).numbers("diameter")).toList();
        BrownForsythe spread = BrownForsythe.test(batches);
        assertEquals(1.705918, spread.f(), 5e-7);
        assertEquals(9, spread.groupsDegreesOfFreedom());
        assertEquals(90, spread.valuesDegreesOfFreedom());
        OneWayAnova means = OneWayAnova.of(batches); // e-Handbook 1.3.5.4: F 2.2969, p 0.0227 (from memory)
        assertEquals(2.2969, means.f(), 5e-5);
        assertEquals(0.022661, means.p(), 5e-7);
    }

    /** Eleven weights of men, S. S. Shapiro, M. B. Wilk, Biometrika 52 (1965) 591-611, example: W 0.79 there; p by R shapiro.test. */
    @Test
    void theElevenWeightsAreNotNormal() {
        ShapiroWilk normal = ShapiroWilk.test(new double[] {148, 154, 158, 160, 161, 162, 166, 170, 182, 195, 236});
        assertEquals(0.78881469, normal.w(), 5e-8);
        assertEquals(0.006703814, normal.p(), 5e-9);
    }

    /** By the sum over lags in R: 20 values with r1 = 0.3, 0.5, 0.7, 0.9. */
    @Test
    void autocorrelatedValuesAreWorthFewerIndependentOnes() {
        assertEquals(11.13636, Autocorrelation.effectiveSize(20, 0.3), 5e-6);
        assertEquals(7.14286, Autocorrelation.effectiveSize(20, 0.5), 5e-6);
        assertEquals(4.09039, Autocorrelation.effectiveSize(20, 0.7), 5e-6);
        assertEquals(1.80275, Autocorrelation.effectiveSize(20, 0.9), 5e-6);
        assertEquals(20, Autocorrelation.effectiveSize(20, -0.3)); // never worth more than themselves
    }

    /** 4000 simulated sets of three short runs with their means and two conditions taken out: the p value is uniform. */
    @Test
    void theStepsOfResidualsKeepTheirFalseAlarmRate() {
        SplittableRandom chance = new SplittableRandom(7);
        int[] run = new int[15];
        double[][] columns = new double[4][15];
        for (int i = 0; i < 15; i++) {
            run[i] = i / 5;
            columns[run[i]][i] = 1;
            columns[3][i] = i % 2 == 0 ? 1 : -1;
        }
        int low = 0;
        int quarter = 0;
        int studies = 4000;
        for (int s = 0; s < studies; s++) {
            double[] scores = chance.doubles(15).map(u -> coldproof.stats.distribution.Normal.quantile(Math.max(u, 1e-12))).toArray();
            double p = ResidualSteps.of(scores, columns, run).pLow();
            low += p < 0.05 ? 1 : 0;
            quarter += p < 0.25 ? 1 : 0;
        }
        assertEquals(0.05, (double) low / studies, 4 * Math.sqrt(0.05 * 0.95 / studies)); // four standard errors, fixed seed
        assertEquals(0.25, (double) quarter / studies, 4 * Math.sqrt(0.25 * 0.75 / studies));
    }

    @Test
    void equalValuesAndShortSeriesAreRefused() {
        assertThrows(IllegalArgumentException.class, () -> neighbours(new double[] {1, 1, 1, 1}));
        assertThrows(IllegalArgumentException.class, () -> ShapiroWilk.test(new double[] {1, 2}));
        assertThrows(IllegalArgumentException.class, () -> ShapiroWilk.test(new double[] {2, 2, 2, 2}));
        assertThrows(IllegalArgumentException.class, () -> MannKendall.test(new double[] {1, Double.NaN, 2}));
        assertThrows(IllegalArgumentException.class, () -> GeneralisedEsd.of(new double[] {1, 2, 3}, 2, 0.05));
        assertThrows(IllegalArgumentException.class, () -> BrownForsythe.test(List.of(new double[] {1, 2})));
    }

    @Test
    void turningASeriesRoundTurnsItsTrendRound() {
        double[] values = DataTable.read("series-data.csv").where("dataset", "drift24").numbers("value");
        double[] turned = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            turned[i] = values[values.length - 1 - i];
        }
        assertEquals(-MannKendall.test(values).s(), MannKendall.test(turned).s());
        assertEquals(neighbours(values).ratio(), neighbours(turned).ratio(), 1e-12);
        assertTrue(Trend.of(values).slope() < 0);
    }
}
