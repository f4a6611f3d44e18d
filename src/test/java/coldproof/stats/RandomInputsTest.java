package coldproof.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.stats.distribution.MultivariateT;
import coldproof.stats.distribution.NoncentralF;
import coldproof.stats.distribution.NoncentralT;
import coldproof.stats.model.DesignMatrix;
import coldproof.stats.model.Estimate;
import coldproof.stats.model.MixedModel;
import coldproof.stats.model.MixedModelFit;
import coldproof.stats.power.Allocation;
import coldproof.stats.power.Claim;
import coldproof.stats.power.Layout;
import coldproof.stats.power.Power;
import coldproof.stats.power.SampleSize;
import coldproof.stats.randomisation.Effort;
import coldproof.stats.randomisation.RandomisationTest;
import coldproof.stats.randomisation.Restriction;
import coldproof.stats.sequential.SequentialBoundary;
import coldproof.stats.sequential.Spending;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;

/** Inputs drawn at random and answered by R; which versions, and how, stands in the tables and in src/test/r/random-inputs.R. */
class RandomInputsTest {
    private static double logSd(double cvPercent) {
        return Math.sqrt(Math.log1p(cvPercent * cvPercent / 1e4));
    }

    private static Claim difference(ReferenceTable.Row row) {
        return new Claim.Difference(Math.log1p(row.number("a") / 100), row.number("d"), row.number("e") == 2 ? Tail.TWO : Tail.ONE);
    }

    private static double answer(ReferenceTable.Row row) {
        double a = row.number("a");
        double b = row.number("b");
        return switch (row.text("kind")) {
            case "noncentral t" -> NoncentralT.cdf(a, b, row.number("c"));
            case "noncentral F" -> NoncentralF.cdf(a, b, row.number("c"), row.number("d"));
            case "power of two groups" -> Power.of(difference(row), new Layout.TwoGroups(logSd(b)), Allocation.equal((int) row.number("c")));
            case "power of pairs" -> Power.of(difference(row), new Layout.Pairs(Math.sqrt(2) * logSd(b)), Allocation.equal((int) row.number("c")));
            case "trials of each level" -> SampleSize.smallest(difference(row), new Layout.TwoGroups(logSd(b)), row.number("c")).allocation().baseline();
            case "power of sessions" -> Power.ofSessions(Math.log1p(a / 100), logSd(b), logSd(row.number("c")), (int) row.number("d"), (int) row.number("e"),
                    (int) row.number("f"), 0.05, Tail.TWO);
            case "power of sameness" -> Power.of(Claim.Equivalence.within(Math.log1p(a / 100), Math.log1p(b / 100), row.number("e")),
                    new Layout.TwoGroups(logSd(row.number("c"))), Allocation.equal((int) row.number("d")));
            case "any of several beyond" -> MultivariateT.oneFactor(filled(row, "c", "d", "e", "f"), b).anyBeyond(a, Tail.TWO);
            case "bound of the second look" -> SequentialBoundary.spending(Spending.OBRIEN_FLEMING_LIKE, 0.05, Tail.TWO, a, b, 1).z(1);
            case "bound of the last look" -> SequentialBoundary.spending(Spending.OBRIEN_FLEMING_LIKE, 0.05, Tail.TWO, a, b, 1).z(2);
            default -> throw new IllegalStateException("nothing answers " + row);
        };
    }

    private static double[] filled(ReferenceTable.Row row, String... columns) {
        return Arrays.stream(columns).filter(row::has).mapToDouble(row::number).toArray();
    }

    @Test
    void everyAnswerIsThatOfR() {
        List<ReferenceTable.Row> rows = ReferenceTable.read("oracle/random-inputs.csv").rows();
        for (ReferenceTable.Row row : rows) {
            Close.relative(row.number("answer"), answer(row), row.number("trust"), row);
        }
        assertTrue(rows.size() > 80, "only " + rows.size() + " rows");
    }

    @Test
    void sittingsWithTrialsMissingAreFittedAsByR() {
        for (Map<String, String> expected : DataTable.read("oracle/sittings-expected.csv").rows()) {
            DataTable data = DataTable.read("oracle/sittings.csv").where("set", expected.get("set"));
            double[] logScores = Arrays.stream(data.numbers("score")).map(Math::log).toArray();
            DesignMatrix effects = DesignMatrix.intercept(data.size()).withFactor("ambient", levels(data, "ambient", "chilled"), 2)
                    .withFactor("fan", levels(data, "fan", "maximum"), 2);
            MixedModelFit fit = MixedModel.fit(logScores, effects, data.codes("session"));
            double[] contrast = effects.difference(expected.get("effect"), 0, 1);
            Estimate kenwardRoger = fit.kenwardRoger(contrast);
            double optimiser = 2e-5; // what R's optimiser leaves open in the variances
            Close.relative(number(expected, "session_variance"), fit.sessionVariance(), optimiser, expected);
            Close.relative(number(expected, "run_variance"), fit.runVariance(), optimiser, expected);
            assertEquals(number(expected, "estimate"), kenwardRoger.logDifference(), 1e-7, expected.toString());
            Close.relative(number(expected, "kr_se"), kenwardRoger.standardError(), optimiser, expected);
            Close.relative(number(expected, "kr_df"), kenwardRoger.degreesOfFreedom(), optimiser, expected);
            Estimate satterthwaite = fit.satterthwaite(contrast);
            Close.relative(number(expected, "satterthwaite_se"), satterthwaite.standardError(), optimiser, expected);
            Close.relative(number(expected, "satterthwaite_df"), satterthwaite.degreesOfFreedom(), 2e-4, expected); // numerical derivatives there
        }
    }

    private static double number(Map<String, String> row, String column) {
        return Double.parseDouble(row.get(column));
    }

    private static int[] levels(DataTable data, String column, String changed) {
        return Arrays.stream(data.texts(column)).mapToInt(level -> level.equals(changed) ? 1 : 0).toArray();
    }

    @Test
    void permutationPIsThatOfR() {
        for (Map<String, String> row : DataTable.read("oracle/permutations.csv").rows()) {
            List<Double> scores = new ArrayList<>();
            scores.addAll(steps(row.get("baseline")));
            int baseline = scores.size();
            scores.addAll(steps(row.get("against")));
            boolean[] against = new boolean[scores.size()];
            Arrays.fill(against, baseline, against.length, true);
            double[] values = scores.stream().mapToDouble(Double::doubleValue).toArray();
            double p = RandomisationTest.ofGroups(values, against, Restriction.NONE).test(Effort.STANDARD, new SplittableRandom(1)).p();
            Close.relative(number(row, "p"), p, 1e-12, row);
        }
    }

    private static List<Double> steps(String numbers) {
        return DoubleStream.of(Arrays.stream(numbers.split(" ")).mapToDouble(Double::parseDouble).toArray()).map(score -> Math.rint(1e7 * Math.log(score))).boxed().toList();
    }
}
