package coldproof.stats.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.stats.DataTable;
import coldproof.stats.model.Strata.Factor;
import coldproof.stats.model.Strata.Line;
import coldproof.stats.model.Strata.Stratum;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class StrataTest {
    private static final double RELATIVE = 1e-10; // sums of squares of a few dozen values, recomputed in double precision elsewhere

    private static Line line(List<Line> table, String term, Stratum stratum) {
        return table.stream().filter(line -> line.term().equals(term) && line.stratum() == stratum).findFirst().orElseThrow();
    }

    private static void assertClose(double expected, double actual, String what) {
        assertEquals(expected, actual, RELATIVE * Math.abs(expected), what);
    }

    /**
     * G. E. P. Box, J. S. Hunter, W. G. Hunter, Statistics for Experimenters, 2nd ed. (2005), ch. 9, prints F 2.75, 11.5 and 4.4 (from memory);
     * sums of squares are exact fractions of the integer data.
     */
    @Test
    void corrosionOfSteelBarsIsTestedInTwoStrata() {
        List<Line> table = Corrosion.strata();
        assertClose(26519.25, line(table, "temperature", Stratum.SESSIONS).sumOfSquares(), "temperature");
        assertClose(14439.625, line(table, "error", Stratum.SESSIONS).sumOfSquares(), "furnace error");
        assertClose(4289.125, line(table, "coating", Stratum.RUNS).sumOfSquares(), "coating");
        assertClose(3269.75, line(table, "temperature:coating", Stratum.RUNS).sumOfSquares(), "interaction");
        assertClose(1120.875, line(table, "error", Stratum.RUNS).sumOfSquares(), "run error");
        assertEquals(3, line(table, "error", Stratum.SESSIONS).degreesOfFreedom());
        assertEquals(9, line(table, "error", Stratum.RUNS).degreesOfFreedom());
        assertEquals(2.75, line(table, "temperature", Stratum.SESSIONS).test().orElseThrow().f(), 0.005);
        assertEquals(11.5, line(table, "coating", Stratum.RUNS).test().orElseThrow().f(), 0.05);
        assertEquals(4.4, line(table, "temperature:coating", Stratum.RUNS).test().orElseThrow().f(), 0.05);
        // R 4.2.2, aov(y ~ temperature * coating + Error(furnace)): p to its printed digits
        assertEquals(0.20932, line(table, "temperature", Stratum.SESSIONS).test().orElseThrow().p(), 0.000005);
        assertEquals(0.0019769, line(table, "coating", Stratum.RUNS).test().orElseThrow().p(), 0.00000005);
        assertEquals(0.0240664, line(table, "temperature:coating", Stratum.RUNS).test().orElseThrow().p(), 0.00000005);
    }

    @Test
    void oatsInBlocksAgreeWithAnotherProgram() {
        DataTable data = DataTable.read("model/oats-data.csv");
        DataTable expected = DataTable.read("model/oats-expected.csv");
        List<Line> table = Oats.strata(data);
        assertLine(line(table, "error", Stratum.BLOCKS), expected.where("method", "aov_block"), "Residuals");
        assertLine(line(table, "whole", Stratum.SESSIONS), expected.where("method", "aov_whole_plot"), "whole");
        assertLine(line(table, "error", Stratum.SESSIONS), expected.where("method", "aov_whole_plot"), "Residuals");
        assertLine(line(table, "sub", Stratum.RUNS), expected.where("method", "aov_sub_plot"), "sub");
        assertLine(line(table, "whole:sub", Stratum.RUNS), expected.where("method", "aov_sub_plot"), "whole:sub");
        assertLine(line(table, "error", Stratum.RUNS), expected.where("method", "aov_sub_plot"), "Residuals");
    }

    private static void assertLine(Line line, DataTable expected, String term) {
        assertEquals(expected.where("quantity", term + ":df").number("value"), line.degreesOfFreedom());
        assertClose(expected.where("quantity", term + ":SS").number("value"), line.sumOfSquares(), term);
        assertClose(expected.where("quantity", term + ":MS").number("value"), line.meanSquare(), term);
        if (!term.equals("Residuals")) {
            assertClose(expected.where("quantity", term + ":F").number("value"), line.test().orElseThrow().f(), term);
            assertClose(expected.where("quantity", term + ":p").number("value"), line.test().orElseThrow().p(), term);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"bal", "zero", "drift"})
    void simulatedSplitPlotsAgreeWithAnotherProgram(String experiment) {
        SplitPlot plot = new SplitPlot(experiment, false);
        DataTable expected = DataTable.read("model/split-plot-expected.csv").where("experiment", experiment).where("method", "strata_anova");
        List<Line> table = Strata.analyse(plot.logScores, plot.session,
                List.of(new Factor("ambient", plot.ambient, 2, true), new Factor("fan", plot.fan, 2, false)));
        for (String term : List.of("ambient", "fan", "ambient:fan")) {
            FTest test = line(table, term, term.equals("ambient") ? Stratum.SESSIONS : Stratum.RUNS).test().orElseThrow();
            assertClose(expected.where("quantity", term + ":F").number("value"), test.f(), term);
            assertClose(expected.where("quantity", term + ":p").number("value"), test.p(), term);
        }
        assertClose(expected.where("quantity", "ms_session").number("value"), line(table, "error", Stratum.SESSIONS).meanSquare(), "session");
        assertClose(expected.where("quantity", "ms_run").number("value"), line(table, "error", Stratum.RUNS).meanSquare(), "run");
        assertEquals(expected.where("quantity", "df_run").number("value"), line(table, "error", Stratum.RUNS).degreesOfFreedom());
    }

    @Test
    void anUnbalancedPlanIsRefused() {
        SplitPlot plot = new SplitPlot("unbal", false);
        IllegalArgumentException refusal = assertThrows(IllegalArgumentException.class, () -> Strata.analyse(plot.logScores, plot.session,
                List.of(new Factor("ambient", plot.ambient, 2, true), new Factor("fan", plot.fan, 2, false))));
        assertTrue(refusal.getMessage().contains("not balanced"), refusal.getMessage());
    }

    @Test
    void oneSessionForEachLevelLeavesNothingToTestTheLevelAgainst() {
        List<Line> table = Strata.analyse(new double[] {1, 2, 4, 3}, new int[] {0, 0, 1, 1},
                List.of(new Factor("ambient", new int[] {0, 0, 1, 1}, 2, true)));
        assertEquals(0, line(table, "error", Stratum.SESSIONS).degreesOfFreedom());
        assertTrue(line(table, "ambient", Stratum.SESSIONS).test().isEmpty());
    }

    /** Sums of squares about the mean add up to the total: no term is lost or counted twice. */
    @Test
    void theSumsOfSquaresAddUp() {
        double total = Strata.analyse(Corrosion.RESISTANCE, Corrosion.FURNACE, List.of(new Factor("temperature", Corrosion.TEMPERATURE, 3, true)))
                .stream().mapToDouble(Line::sumOfSquares).sum();
        assertClose(26519.25 + 14439.625 + 4289.125 + 3269.75 + 1120.875, total, "total");
    }
}
