package coldproof.stats.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.stats.DataTable;
import coldproof.stats.interval.ConfidenceInterval;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class MixedModelTest {
    private static final double RELATIVE = 1e-8; // the tables' exact values are good to 1e-9
    private static final double OPTIMISER = 1e-6; // where the other program's optimiser stopped

    @TestFactory
    Stream<DynamicTest> agreesWithTheExactSolutionOfEveryExperiment() {
        return DataTable.read("model/split-plot-expected.csv").rows().stream()
                .filter(row -> row.get("source").startsWith("own") && !row.get("quantity").equals("reml_criterion"))
                .map(row -> DynamicTest.dynamicTest(row.get("experiment") + " " + row.get("method") + " " + row.get("quantity"),
                        () -> check(row)));
    }

    private static void check(Map<String, String> row) {
        double value = Double.parseDouble(row.get("value"));
        String method = row.get("method");
        SplitPlot plot = new SplitPlot(row.get("experiment"), method.endsWith("_drift"));
        double actual = method.startsWith("reml") ? component(plot, row.get("quantity")) : test(plot, method, row.get("quantity"));
        assertEquals(value, actual, RELATIVE * Math.abs(value));
    }

    private static double component(SplitPlot plot, String quantity) {
        MixedModelFit fit = plot.fit();
        switch (quantity) {
            case "var_session":
                return fit.sessionVariance();
            case "var_run":
                return fit.runVariance();
            case "singular":
                return fit.isSingular() ? 1 : 0;
            case "drift_slope":
                return fit.satterthwaite(plot.contrast("drift")).logDifference();
            case "drift_slope_se":
                return fit.satterthwaite(plot.contrast("drift")).standardError();
            default:
                throw new IllegalArgumentException(quantity);
        }
    }

    private static double test(SplitPlot plot, String method, String quantity) {
        String[] parts = quantity.split(":");
        double[] contrast = plot.contrast(parts[0]);
        Estimate estimate = method.startsWith("satterthwaite") ? plot.fit().satterthwaite(contrast) : plot.fit().kenwardRoger(contrast);
        ConfidenceInterval interval = estimate.interval(0.95);
        switch (parts[1]) {
            case "estimate_log":
                return estimate.logDifference();
            case "se_log":
                return estimate.standardError();
            case "df":
                return estimate.degreesOfFreedom();
            case "t":
                return estimate.t();
            case "p":
                return estimate.p();
            case "ci95_low_log":
                return interval.low();
            case "ci95_high_log":
                return interval.high();
            case "estimate_pct":
                return 100 * Math.expm1(estimate.logDifference());
            case "ci95_low_pct":
                return 100 * Math.expm1(interval.low());
            case "ci95_high_pct":
                return 100 * Math.expm1(interval.high());
            default:
                throw new IllegalArgumentException(quantity);
        }
    }

    /** The restricted likelihood depends on the coding: the table's is that of treatment contrasts. */
    @ParameterizedTest
    @ValueSource(strings = {"bal", "unbal", "zero", "drift"})
    void theRestrictedLikelihoodIsThatOfAnotherProgram(String experiment) {
        SplitPlot plot = new SplitPlot(experiment, false);
        double[] chilled = new double[plot.ambient.length];
        double[] maximum = new double[plot.fan.length];
        double[] both = new double[plot.fan.length];
        for (int i = 0; i < both.length; i++) {
            chilled[i] = plot.ambient[i];
            maximum[i] = plot.fan[i];
            both[i] = chilled[i] * maximum[i];
        }
        DesignMatrix treatment = DesignMatrix.intercept(both.length).withCovariate("chilled", chilled).withCovariate("maximum", maximum)
                .withCovariate("both", both);
        double expected = DataTable.read("model/split-plot-expected.csv").where("experiment", experiment).where("method", "reml_plain")
                .where("quantity", "reml_criterion").number("value");
        assertEquals(expected, MixedModel.fit(plot.logScores, treatment, plot.session).criterion(), 1e-9 * Math.abs(expected));
    }

    /** R 4.2.2, lmerTest 3.1-3 type III tests; its optimiser leaves the F about 1e-6 away. */
    @TestFactory
    Stream<DynamicTest> termsAgreeWithTypeThreeTests() {
        return DataTable.read("model/split-plot-expected.csv").rows().stream().filter(row -> row.get("quantity").startsWith("anova3"))
                .map(row -> DynamicTest.dynamicTest(row.get("experiment") + " " + row.get("method") + " " + row.get("quantity"), () -> {
                    SplitPlot plot = new SplitPlot(row.get("experiment"), row.get("method").endsWith("_drift"));
                    String quantity = row.get("quantity").substring("anova3 ".length());
                    String term = quantity.substring(0, quantity.lastIndexOf(':'));
                    double[][] rows = plot.effects().hypothesis(term);
                    FTest test = row.get("method").startsWith("sat") ? plot.fit().satterthwaite(rows) : plot.fit().kenwardRoger(rows);
                    double value = Double.parseDouble(row.get("value"));
                    double actual = quantity.endsWith(":F") ? test.f() : quantity.endsWith(":den_df") ? test.denominator() : test.p();
                    assertEquals(value, actual, 10 * OPTIMISER * Math.abs(value)); // p of a large F is ten times as sensitive
                }));
    }

    /** Exact components from the mean squares: (4813.2083 - 124.54167) / 4 and 124.54167. */
    @Test
    void corrosionHasTheComponentsOfItsMeanSquares() {
        MixedModelFit fit = MixedModel.fit(Corrosion.RESISTANCE, Corrosion.effects(), Corrosion.FURNACE);
        double run = 1120.875 / 9;
        double furnace = (14439.625 / 3 - run) / 4;
        assertEquals(run, fit.runVariance(), 1e-11 * run);
        assertEquals(furnace, fit.sessionVariance(), 1e-11 * furnace);
        FTest temperature = fit.kenwardRoger(Corrosion.effects().hypothesis("temperature"));
        assertEquals(26519.25 / 2 / (14439.625 / 3), temperature.f(), 1e-10);
        assertEquals(3, temperature.denominator(), 1e-9);
        assertEquals(9, fit.kenwardRoger(Corrosion.effects().hypothesis("coating")).denominator(), 1e-9);
        assertEquals(9, fit.satterthwaite(Corrosion.effects().hypothesis("temperature:coating")).denominator(), 1e-9);
    }

    @Test
    void oatsWithBlocksHaveTheComponentsOfTheirMeanSquares() {
        DataTable data = DataTable.read("model/oats-data.csv");
        DataTable expected = DataTable.read("model/oats-expected.csv").where("method", "anova_components");
        MixedModelFit fit = MixedModel.fit(data.numbers("y"), Oats.effects(data), Oats.plots(data), data.codes("block"));
        assertEquals(expected.where("quantity", "var_block").number("value"), fit.blockVariance(), RELATIVE * fit.blockVariance());
        assertEquals(expected.where("quantity", "var_whole_plot").number("value"), fit.sessionVariance(), RELATIVE * fit.sessionVariance());
        assertEquals(expected.where("quantity", "var_residual").number("value"), fit.runVariance(), RELATIVE * fit.runVariance());
        assertEquals(5, fit.blockDegreesOfFreedom());
        assertEquals(10, fit.sessionDegreesOfFreedom());
        assertEquals(45, fit.runDegreesOfFreedom());
    }

    /** F and df against the strata (exact), contrasts against R (balanced, so only its optimiser is in the way). */
    @Test
    void oatsWithBlocksAreTestedAsInTheStrata() {
        DataTable data = DataTable.read("model/oats-data.csv");
        DataTable expected = DataTable.read("model/oats-expected.csv");
        DesignMatrix effects = Oats.effects(data);
        MixedModelFit fit = MixedModel.fit(data.numbers("y"), effects, Oats.plots(data), data.codes("block"));
        for (String term : new String[] {"whole", "sub", "whole:sub"}) {
            String method = term.equals("whole") ? "aov_whole_plot" : "aov_sub_plot";
            double f = expected.where("method", method).where("quantity", term + ":F").number("value");
            double p = expected.where("method", method).where("quantity", term + ":p").number("value");
            for (FTest test : new FTest[] {fit.kenwardRoger(effects.hypothesis(term)), fit.satterthwaite(effects.hypothesis(term))}) {
                assertEquals(f, test.f(), RELATIVE * f);
                assertEquals(term.equals("whole") ? 10 : 45, test.denominator(), 1e-7);
                assertEquals(p, test.p(), RELATIVE * p);
            }
        }
        int golden = data.distinct("whole").indexOf("Golden.rain");
        int victory = data.distinct("whole").indexOf("Victory");
        Estimate estimate = fit.kenwardRoger(effects.difference("whole", golden, victory));
        DataTable contrast = expected.where("method", "kenward_roger");
        assertEquals(contrast.where("quantity", "whole Victory - Golden.rain:estimate").number("value"), estimate.logDifference(), 1e-10);
        assertEquals(contrast.where("quantity", "whole Victory - Golden.rain:SE").number("value"), estimate.standardError(), OPTIMISER);
        assertEquals(contrast.where("quantity", "whole Victory - Golden.rain:p.value").number("value"), estimate.p(), OPTIMISER);
    }

    /** U. Halekoh, S. Hojsgaard, J. Stat. Software 59(9) (2014) print F 15.21 and p 0.060 for harvest; R 4.2.2, pbkrtest 0.5.2 gives more digits. */
    @Test
    void aHarvestTimeOfBeetsIsTestedOnTwoDegreesOfFreedom() {
        DataTable data = DataTable.read("model/beets-data.csv");
        int[] plot = new int[data.size()];
        for (int i = 0; i < plot.length; i++) {
            plot[i] = 2 * data.codes("block")[i] + data.codes("harvest")[i];
        }
        DesignMatrix effects = DesignMatrix.intercept(data.size()).withFactor("block", data.codes("block"), 3)
                .withFactor("sow", data.codes("sow"), 5).withFactor("harvest", data.codes("harvest"), 2);
        MixedModelFit fit = MixedModel.fit(data.numbers("sugpct"), effects, plot);
        assertEquals(0.0007666667, fit.sessionVariance(), 5e-11);
        assertEquals(0.0025, fit.runVariance(), 1e-12);
        FTest harvest = fit.kenwardRoger(effects.hypothesis("harvest"));
        assertEquals(15.2105, harvest.f(), 0.00005);
        assertEquals(2, harvest.denominator(), 1e-9);
        assertEquals(0.059898, harvest.p(), 5e-7);
        FTest sow = fit.satterthwaite(effects.hypothesis("sow"));
        assertEquals(101, sow.f(), 1e-9);
        assertEquals(20, sow.denominator(), 1e-9);
        assertEquals(5.7412e-13, sow.p(), 5e-18);
    }

    /** A change of unit moves the intercept of the logs and nothing else. */
    @Test
    void doublingEveryScoreChangesNoTest() {
        SplitPlot plot = new SplitPlot("unbal", false);
        double[] doubled = plot.logScores.clone();
        for (int i = 0; i < doubled.length; i++) {
            doubled[i] += Math.log(2);
        }
        Estimate before = plot.fit().kenwardRoger(plot.contrast("ambient"));
        Estimate after = MixedModel.fit(doubled, plot.effects(), plot.session).kenwardRoger(plot.contrast("ambient"));
        assertEquals(before.logDifference(), after.logDifference(), 1e-13);
        assertEquals(before.degreesOfFreedom(), after.degreesOfFreedom(), 1e-9);
    }

    @Test
    void aSingularFitKeepsTheSessionsDegreesOfFreedomUnderKenwardRoger() {
        SplitPlot plot = new SplitPlot("zero", false);
        MixedModelFit fit = plot.fit();
        assertTrue(fit.isSingular());
        assertEquals(0, fit.sessionVariance());
        assertEquals(4, fit.sessionDegreesOfFreedom());
        assertEquals(44, fit.satterthwaite(plot.contrast("ambient")).degreesOfFreedom(), 1e-9);
        assertEquals(4, fit.satterthwaite(plot.contrast("ambient")).withDegreesOfFreedomAtMost(4).degreesOfFreedom());
    }

    @Test
    void oneSessionForEachLevelIsRefused() {
        DesignMatrix effects = DesignMatrix.intercept(4).withFactor("ambient", new int[] {0, 0, 1, 1}, 2);
        IllegalArgumentException refusal = assertThrows(IllegalArgumentException.class,
                () -> MixedModel.fit(new double[] {1, 2, 3, 5}, effects, new int[] {0, 0, 1, 1}));
        assertTrue(refusal.getMessage().contains("between sessions"), refusal.getMessage());
    }

    @Test
    void scoresThatDoNotVaryWithinSessionsAreRefused() {
        DesignMatrix effects = DesignMatrix.intercept(6);
        IllegalArgumentException refusal = assertThrows(IllegalArgumentException.class,
                () -> MixedModel.fit(new double[] {1.1, 1.1, 2.3, 2.3, 3.7, 3.7}, effects, new int[] {0, 0, 1, 1, 2, 2}));
        assertTrue(refusal.getMessage().contains("do not vary"), refusal.getMessage());
    }

    @Test
    void anEmptyCellIsNamed() {
        DesignMatrix effects = DesignMatrix.intercept(6).withFactor("ambient", new int[] {0, 0, 0, 1, 1, 1}, 2)
                .withFactor("fan", new int[] {0, 0, 1, 0, 0, 0}, 2).withInteraction("ambient", "fan");
        IllegalArgumentException refusal = assertThrows(IllegalArgumentException.class,
                () -> MixedModel.fit(new double[] {1, 2, 3, 5, 4, 7}, effects, new int[] {0, 0, 1, 2, 2, 3}));
        assertTrue(refusal.getMessage().contains("ambient[0]:fan[0]"), refusal.getMessage());
    }

    @Test
    void aSessionInTwoBlocksIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> MixedModel.fit(new double[] {1, 2, 3, 5}, DesignMatrix.intercept(4),
                new int[] {0, 0, 1, 1}, new int[] {0, 1, 1, 1}));
    }
}
