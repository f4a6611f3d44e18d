package coldproof.stats.interval;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import coldproof.stats.DataTable;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

class IntervalsTest {
    private static double[][] groups(String dataset) {
        if (dataset.startsWith("pairs")) {
            DataTable data = DataTable.read("paired-data.csv").where("dataset", dataset);
            return new double[][] {data.numbers("A"), data.numbers("B")};
        }
        DataTable data = DataTable.read("two-sample-data.csv").where("dataset", dataset);
        return new double[][] {data.where("level", "A").numbers("value"), data.where("level", "B").numbers("value")};
    }

    private static double[] logs(double[] values) {
        return Arrays.stream(values).map(Math::log).toArray();
    }

    @TestFactory
    Stream<DynamicTest> fiellerAgreesWithAnotherProgram() {
        return DataTable.read("tests-expected.csv").rows().stream().filter(row -> row.get("method").startsWith("fieller"))
                .map(row -> DynamicTest.dynamicTest(row.get("dataset") + " " + row.get("quantity"), () -> fieller(row)));
    }

    private static void fieller(Map<String, String> row) {
        double[][] groups = groups(row.get("dataset"));
        Fieller found = row.get("method").equals("fieller_paired") ? Fieller.ofPairs(groups[1], groups[0], 0.95) : Fieller.ofGroups(groups[1], groups[0], 0.95);
        double actual = switch (row.get("quantity")) {
            case "ratio" -> found.ratio();
            case "g" -> found.g();
            case "ci95_low" -> found.interval().low();
            case "ci95_high" -> found.interval().high();
            default -> throw new IllegalArgumentException("no check for " + row);
        };
        double expected = Double.parseDouble(row.get("value"));
        assertEquals(expected, actual, 1e-10 * Math.abs(expected));
    }

    /** A worked example of open documentation: a 14, b 7, standard errors 3 and 2, 10 df, 90 %: 1.051413 to 4.414296. */
    @Test
    void fiellersIntervalIsFarFromSymmetricForAnUncertainDenominator() {
        Fieller found = Fieller.of(14, 7, 9, 4, 0, 10, 0.9);
        assertEquals(0.268164516, found.g(), 5e-10);
        assertEquals(1.051413, found.interval().low(), 5e-7);
        assertEquals(4.414296, found.interval().high(), 5e-7);
    }

    @Test
    void aDenominatorThatMayBeZeroHasNoBoundedInterval() {
        assertFalse(Fieller.of(14, 7, 9, 25, 0, 10, 0.95).interval().isBounded());
        assertThrows(IllegalArgumentException.class, () -> Fieller.of(1, 0, 1, 1, 0, 5, 0.95));
    }

    /** Inside the spread over seeds that SciPy's own intervals have; 3 + 3 values are left out, for which packages differ by 8 %. */
    @TestFactory
    Stream<DynamicTest> theBootstrapAgreesWithAnotherProgram() {
        return Stream.of("fps_even", "fps_uneven", "score_ties", "no_change").flatMap(dataset -> Stream.of("low", "high")
                .map(end -> DynamicTest.dynamicTest(dataset + " " + end, () -> difference(dataset, end))));
    }

    private static void difference(String dataset, String end) {
        double[][] groups = groups(dataset);
        DataTable expected = DataTable.read("tests-expected.csv").where("dataset", dataset).where("method", "bca_log_difference");
        double spread = expected.where("quantity", "ci95_" + end + "_seed_sd").number("value");
        double median = expected.where("quantity", "ci95_" + end + "_median").number("value");
        BiasCorrectedBootstrap found = BiasCorrectedBootstrap.ofDifference(logs(groups[0]), logs(groups[1]), 0.95, 9999, new SplittableRandom(4));
        assertEquals(median, end.equals("low") ? found.interval().low() : found.interval().high(), 5 * spread);
    }

    @TestFactory
    Stream<DynamicTest> theAccelerationOfPairsIsExact() {
        List<String> datasets = DataTable.read("tests-expected.csv").where("method", "bca_mean_log_ratio").distinct("dataset");
        return datasets.stream().map(dataset -> DynamicTest.dynamicTest(dataset, () -> {
            double[][] groups = groups(dataset);
            double[] ratios = IntStream.range(0, groups[0].length).mapToDouble(i -> Math.log(groups[1][i] / groups[0][i])).toArray();
            double expected = DataTable.read("tests-expected.csv").where("dataset", dataset).where("method", "bca_mean_log_ratio")
                    .where("quantity", "acceleration").number("value");
            assertEquals(expected, BiasCorrectedBootstrap.ofMean(ratios, 0.95, 200, new SplittableRandom(1)).acceleration(), 1e-10 * Math.abs(expected));
        }));
    }
}
