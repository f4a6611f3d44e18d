package coldproof.stats.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.stats.DataTable;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** The t tests on groups, pairs and session means, and the test within sessions. */
class SmallTestsTest {
    private static final double RELATIVE = 1e-9; // t near 0.1 from values near 100: rounding of the logs costs up to 2e-12, p more

    @TestFactory
    Stream<DynamicTest> groupsAndPairsAgreeWithAnotherProgram() {
        return DataTable.read("tests-expected.csv").rows().stream().filter(row -> row.get("method").matches("(pooled|welch|paired)_t_(raw|log)"))
                .map(row -> DynamicTest.dynamicTest(row.get("dataset") + " " + row.get("method") + " " + row.get("quantity"), () -> check(row)));
    }

    private static void check(Map<String, String> row) {
        double value = Double.parseDouble(row.get("value"));
        boolean log = row.get("method").endsWith("_log");
        double[][] groups = groups(row.get("dataset"), log);
        Estimate estimate = row.get("method").startsWith("pooled") ? TwoGroups.pooled(groups[0], groups[1])
                : row.get("method").startsWith("welch") ? TwoGroups.welch(groups[0], groups[1]) : Pairs.test(groups[0], groups[1]);
        assertEquals(value, quantity(estimate, row.get("quantity")), RELATIVE * Math.abs(value));
    }

    static double[][] groups(String dataset, boolean log) {
        double[][] groups;
        if (dataset.startsWith("pairs")) {
            DataTable data = DataTable.read("paired-data.csv").where("dataset", dataset);
            groups = new double[][] {data.numbers("A"), data.numbers("B")};
        } else {
            DataTable data = DataTable.read("two-sample-data.csv").where("dataset", dataset);
            groups = new double[][] {data.where("level", "A").numbers("value"), data.where("level", "B").numbers("value")};
        }
        for (double[] group : groups) {
            for (int i = 0; log && i < group.length; i++) {
                group[i] = Math.log(group[i]);
            }
        }
        return groups;
    }

    private static double quantity(Estimate estimate, String quantity) {
        switch (quantity) {
            case "estimate":
                return estimate.logDifference();
            case "t":
                return estimate.t();
            case "df":
                return estimate.degreesOfFreedom();
            case "p_two_sided":
                return estimate.p();
            case "p_greater":
                return estimate.pGreater();
            case "ci95_low":
                return estimate.interval(0.95).low();
            case "ci95_high":
                return estimate.interval(0.95).high();
            case "estimate_pct":
                return 100 * Math.expm1(estimate.logDifference());
            case "ci95_low_pct":
                return 100 * Math.expm1(estimate.interval(0.95).low());
            case "ci95_high_pct":
                return 100 * Math.expm1(estimate.interval(0.95).high());
            default:
                throw new IllegalArgumentException(quantity);
        }
    }

    @Test
    void sessionMeansAgreeWithAnotherProgram() {
        DataTable data = DataTable.read("session-data.csv");
        DataTable expected = DataTable.read("tests-expected.csv").where("method", "session_means_t");
        double[] logs = logs(data.numbers("value"));
        boolean[] against = new boolean[logs.length];
        for (int i = 0; i < logs.length; i++) {
            against[i] = data.texts("level")[i].equals("B");
        }
        SessionMeans means = SessionMeans.of(logs, data.codes("session"), against);
        Estimate estimate = means.pooled();
        assertEquals(expected.where("quantity", "t").number("value"), estimate.t(), RELATIVE * estimate.t());
        assertEquals(expected.where("quantity", "p_two_sided").number("value"), estimate.p(), RELATIVE * estimate.p());
        assertEquals(6, estimate.degreesOfFreedom());
        assertEquals(3, means.trialsPerBaselineSession(), 1e-12);
    }

    private static double[] logs(double[] values) {
        double[] logs = new double[values.length];
        for (int i = 0; i < logs.length; i++) {
            logs[i] = Math.log(values[i]);
        }
        return logs;
    }

    @TestFactory
    Stream<DynamicTest> sessionMeansOfSplitPlotsAgreeWithAnotherProgram() {
        return DataTable.read("model/split-plot-expected.csv").rows().stream().filter(row -> row.get("method").equals("session_means_t"))
                .map(row -> DynamicTest.dynamicTest(row.get("experiment") + " " + row.get("quantity"), () -> {
                    SplitPlot plot = new SplitPlot(row.get("experiment"), false);
                    Estimate estimate = SessionMeans.of(plot.logScores, plot.session, isOne(plot.ambient), plot.fan).pooled();
                    String quantity = row.get("quantity").substring("ambient:".length());
                    double value = Double.parseDouble(row.get("value"));
                    double actual = quantity.equals("estimate_log") ? estimate.logDifference()
                            : quantity(estimate, quantity.equals("p") ? "p_two_sided" : quantity);
                    assertEquals(value, actual, RELATIVE * Math.abs(value));
                }));
    }

    private static boolean[] isOne(int[] codes) {
        boolean[] is = new boolean[codes.length];
        for (int i = 0; i < is.length; i++) {
            is[i] = codes[i] == 1;
        }
        return is;
    }

    /** In a balanced plan the test within sessions is that of the run stratum: R 4.2.2, aov with Error(session). */
    @Test
    void aFactorSetPerTrialIsTestedWithinSessions() {
        SplitPlot plot = new SplitPlot("bal", false);
        DataTable expected = DataTable.read("model/split-plot-expected.csv").where("experiment", "bal").where("method", "strata_anova");
        Estimate estimate = WithinSessions.test(plot.logScores, plot.effects(), plot.session, plot.contrast("fan"));
        assertEquals(38, estimate.degreesOfFreedom());
        double f = expected.where("quantity", "fan:F").number("value");
        assertEquals(f, estimate.t() * estimate.t(), RELATIVE * f);
        assertEquals(expected.where("quantity", "fan:p").number("value"), estimate.p(), RELATIVE * estimate.p());
    }

    @Test
    void aFactorSetPerSessionIsNotTestedWithinSessions() {
        SplitPlot plot = new SplitPlot("bal", false);
        IllegalArgumentException refusal = assertThrows(IllegalArgumentException.class,
                () -> WithinSessions.test(plot.logScores, plot.effects(), plot.session, plot.contrast("ambient")));
        assertTrue(refusal.getMessage().contains("does not vary within sessions"), refusal.getMessage());
    }

    /** An offset of a whole session is what the test within sessions must not see. */
    @Test
    void aSlowSessionDoesNotMoveTheTestWithinSessions() {
        SplitPlot plot = new SplitPlot("unbal", false);
        double[] shifted = plot.logScores.clone();
        for (int i = 0; i < shifted.length; i++) {
            shifted[i] += plot.session[i] == 2 ? 0.5 : 0;
        }
        Estimate before = WithinSessions.test(plot.logScores, plot.effects(), plot.session, plot.contrast("fan"));
        Estimate after = WithinSessions.test(shifted, plot.effects(), plot.session, plot.contrast("fan"));
        assertEquals(before.logDifference(), after.logDifference(), 1e-13);
        assertEquals(before.standardError(), after.standardError(), 1e-13);
    }

    @Test
    void aSessionWithBothLevelsHasNoSessionMeanOfALevel() {
        assertThrows(IllegalArgumentException.class,
                () -> SessionMeans.of(new double[] {1, 2}, new int[] {0, 0}, new boolean[] {false, true}));
    }

    @Test
    void equalScoresGiveAnEstimateWithoutNoise() {
        Estimate estimate = TwoGroups.pooled(new double[] {2, 2}, new double[] {3, 3});
        assertTrue(estimate.isWithoutNoise());
        assertEquals(0, estimate.p());
        assertEquals(1, TwoGroups.pooled(new double[] {2, 2}, new double[] {2, 2}).p());
    }
}
