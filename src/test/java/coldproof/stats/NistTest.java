package coldproof.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.stats.interval.Moments;
import coldproof.stats.model.DesignMatrix;
import coldproof.stats.model.Estimate;
import coldproof.stats.model.OneWayAnova;
import coldproof.stats.model.WithinSessions;
import coldproof.stats.series.Autocorrelation;
import coldproof.stats.series.StraightLine;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** NIST Statistical Reference Datasets: certified to 15 digits; asked for at least 9 (log relative error), fewer only where the data themselves hold fewer. */
class NistTest {
    private static final DataTable DATA = DataTable.read("nist/data.csv");
    private static final DataTable CERTIFIED = DataTable.read("nist/certified.csv");

    private static double digits(double certified, double computed) {
        return computed == certified ? 15 : Math.min(15, -Math.log10(Math.abs(computed - certified) / Math.abs(certified)));
    }

    @TestFactory
    Stream<DynamicTest> univariateSummaries() {
        return CERTIFIED.where("kind", "univariate").rows().stream()
                .map(row -> DynamicTest.dynamicTest(row.get("dataset") + " " + row.get("quantity"), () -> univariate(row)));
    }

    private static void univariate(Map<String, String> row) {
        double[] y = DATA.where("kind", "univariate").where("dataset", row.get("dataset")).numbers("y");
        Moments moments = Moments.of(y);
        double computed = switch (row.get("quantity")) {
            case "n" -> y.length;
            case "mean" -> moments.mean();
            case "sd" -> moments.standardDeviation();
            case "lag1_autocorrelation" -> Autocorrelation.of(y).lagOne();
            default -> throw new IllegalArgumentException("no check for " + row);
        };
        // NumAcc4 is 1e7 + 0.1, 0.2, 0.3: a double keeps the tenths to 2e-9 only, so that no program can have more than about 8 digits of their spread
        double wanted = row.get("dataset").equals("NumAcc4") && !row.get("quantity").equals("mean") ? 7.5 : 9;
        double found = digits(Double.parseDouble(row.get("value")), computed);
        assertTrue(found >= wanted, row + ": " + computed + " has " + found + " digits");
    }

    @TestFactory
    Stream<DynamicTest> analysesOfVariance() {
        return CERTIFIED.where("kind", "anova").rows().stream()
                .map(row -> DynamicTest.dynamicTest(row.get("dataset") + " " + row.get("quantity"), () -> anova(row)));
    }

    private static void anova(Map<String, String> row) {
        DataTable data = DATA.where("kind", "anova").where("dataset", row.get("dataset"));
        List<double[]> groups = data.distinct("x_or_group").stream().map(group -> data.where("x_or_group", group).numbers("y")).toList();
        OneWayAnova table = OneWayAnova.of(groups);
        double within = table.valuesSquares() / table.valuesDegreesOfFreedom();
        double computed = switch (row.get("quantity")) {
            case "n" -> data.size();
            case "between_ss" -> table.groupsSquares();
            case "within_ss" -> table.valuesSquares();
            case "between_df" -> table.groupsDegreesOfFreedom();
            case "within_df" -> table.valuesDegreesOfFreedom();
            case "between_ms" -> table.groupsSquares() / table.groupsDegreesOfFreedom();
            case "within_ms" -> within;
            case "F" -> table.f();
            case "residual_sd" -> Math.sqrt(within);
            case "r_squared" -> table.groupsSquares() / (table.groupsSquares() + table.valuesSquares());
            default -> throw new IllegalArgumentException("no check for " + row);
        };
        // SmLs07 is 1e12 + tenths: a double keeps the tenths to 1e-4 only, which leaves 3 to 4 digits of their squares
        double wanted = row.get("dataset").equals("SmLs07") ? 2.5 : 9;
        double found = digits(Double.parseDouble(row.get("value")), computed);
        assertTrue(found >= wanted, row + ": " + computed + " has " + found + " digits");
    }

    @Test
    void theSlopeOfNorris() {
        DataTable data = DATA.where("kind", "linear").where("dataset", "Norris");
        DataTable certified = CERTIFIED.where("kind", "linear").where("dataset", "Norris");
        DesignMatrix model = DesignMatrix.intercept(data.size()).withCovariate("x", data.numbers("x_or_group"));
        Estimate slope = WithinSessions.test(data.numbers("y"), model, new int[data.size()], model.slope("x"));
        assertTrue(digits(certified.where("quantity", "B1").number("value"), slope.logDifference()) >= 11);
        assertTrue(digits(certified.where("quantity", "B1_sd").number("value"), slope.standardError()) >= 9);
        assertEquals(34, slope.degreesOfFreedom());
    }

    @Test
    void theLineOfNorris() {
        DataTable data = DATA.where("kind", "linear").where("dataset", "Norris");
        DataTable certified = CERTIFIED.where("kind", "linear").where("dataset", "Norris");
        StraightLine line = StraightLine.of(data.numbers("x_or_group"), data.numbers("y"));
        assertTrue(digits(certified.where("quantity", "B0").number("value"), line.intercept()) >= 9);
        assertTrue(digits(certified.where("quantity", "B1").number("value"), line.slope()) >= 11);
        assertTrue(digits(certified.where("quantity", "B1_sd").number("value"), line.slopeError()) >= 9);
        assertTrue(digits(certified.where("quantity", "residual_sd").number("value"), Math.sqrt(line.residualSquares() / 34)) >= 9);
    }
}
