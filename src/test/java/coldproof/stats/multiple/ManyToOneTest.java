package coldproof.stats.multiple;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.stats.Close;
import coldproof.stats.DataTable;
import coldproof.stats.Tail;
import coldproof.stats.interval.ConfidenceInterval;
import coldproof.stats.model.Estimate;
import coldproof.stats.model.TwoGroups;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.random.RandomGenerator;
import org.junit.jupiter.api.Test;

class ManyToOneTest {
    private static final double[] CONTROL = {7.40, 8.50, 7.20, 8.24, 9.84, 8.32};
    private static final double[] DRUG_A = {9.76, 8.80, 7.68, 9.36};
    private static final double[] DRUG_B = {12.80, 9.68, 12.16, 9.20, 10.55};

    private static double expected(String method, String quantity) {
        return DataTable.read("multiple/many-to-one-expected.csv").where("method", method).where("quantity", quantity).number("value");
    }

    private static double[] logs(DataTable data, String level) {
        return Arrays.stream(data.where("level", level).numbers("value")).map(Math::log).toArray();
    }

    @Test
    void fourChangesAgreeWithADoubleIntegralElsewhere() {
        DataTable data = DataTable.read("multiple/many-to-one-data.csv");
        List<String> levels = data.distinct("level");
        List<String> changes = levels.subList(1, levels.size());
        ManyToOne family = ManyToOne.ofGroups(logs(data, levels.get(0)), changes.stream().map(level -> logs(data, level)).toList());
        double tolerance = 1e-8; // both integrals are good to 1e-9
        Close.relative(expected("dunnett_two_sided", "critical_value_95"), family.criticalValue(0.95, Tail.TWO), tolerance, "two-sided");
        Close.relative(expected("dunnett_greater", "critical_value_95"), family.criticalValue(0.95, Tail.ONE), tolerance, "one-sided");
        for (int i = 0; i < changes.size(); i++) {
            String change = changes.get(i);
            Estimate alone = family.estimate(i);
            assertEquals(expected("dunnett_two_sided", "df"), alone.degreesOfFreedom());
            Close.relative(expected("dunnett_two_sided", change + ":t"), alone.t(), 1e-12, change);
            Close.relative(expected("dunnett_two_sided", change + ":p_unadjusted"), alone.p(), 1e-11, change);
            Close.relative(expected("dunnett_two_sided", change + ":p_adjusted"), family.adjustedP(i, Tail.TWO), tolerance, change);
            Close.relative(expected("dunnett_greater", change + ":p_adjusted"), family.adjustedP(i, Tail.ONE), tolerance, change);
            ConfidenceInterval interval = family.interval(i, 0.95);
            Close.relative(expected("dunnett_two_sided", change + ":ci95_low_pct"), 100 * Math.expm1(interval.low()), tolerance, change);
            Close.relative(expected("dunnett_two_sided", change + ":ci95_high_pct"), 100 * Math.expm1(interval.high()), tolerance, change);
        }
    }

    /**
     * Blood counts of C. W. Dunnett, JASA 50 (1955), table 3 (data from memory; also the worked example of SciPy's documentation of its dunnett
     * function). Values recomputed in R 4.2.2 with multcomp 1.4-22, whose integration is good to about 1e-4.
     */
    @Test
    void theBloodCountsOfThePaperComeOutAsElsewhere() {
        ManyToOne family = ManyToOne.ofGroups(CONTROL, List.of(DRUG_A, DRUG_B));
        assertEquals(0.65, family.estimate(0).logDifference(), 1e-12);
        assertEquals(2.628, family.estimate(1).logDifference(), 1e-12);
        assertEquals(0.8570, family.estimate(0).t(), 0.00005);
        assertEquals(3.6938, family.estimate(1).t(), 0.00005);
        assertEquals(0.620102, family.adjustedP(0, Tail.TWO), 1e-4);
        assertEquals(0.005825, family.adjustedP(1, Tail.TWO), 1e-4);
        assertEquals(2.51362, family.criticalValue(0.95, Tail.TWO), 2e-4);
        assertEquals(-1.25641, family.interval(0, 0.95).low(), 2e-4);
        assertEquals(4.41637, family.interval(1, 0.95).high(), 2e-4);
    }

    @Test
    void oneChangeIsThePlainTest() {
        Estimate plain = TwoGroups.pooled(CONTROL, DRUG_A);
        ManyToOne family = ManyToOne.ofGroups(CONTROL, List.of(DRUG_A));
        Close.relative(plain.p(), family.adjustedP(0, Tail.TWO), 1e-10, "p");
        Close.relative(plain.interval(0.95).low(), family.interval(0, 0.95).low(), 1e-9, "low");
    }

    @Test
    void intervalAndAdjustedPNeverDisagree() {
        RandomGenerator random = new SplittableRandom(5);
        for (int round = 0; round < 40; round++) {
            List<double[]> groups = new ArrayList<>();
            for (int g = 0; g < 4; g++) {
                double shift = g == 3 ? random.nextDouble() * 3 : 0;
                groups.add(random.doubles(3 + g).map(u -> Math.log(u) + shift).toArray());
            }
            ManyToOne family = ManyToOne.ofGroups(groups.get(0), groups.subList(1, 4));
            for (int i = 0; i < 3; i++) {
                assertEquals(family.adjustedP(i, Tail.TWO) <= 0.05, !family.interval(i, 0.95).contains(0), "round " + round);
                assertTrue(family.adjustedP(i, Tail.TWO) >= family.estimate(i).p() && family.adjustedP(i, Tail.TWO) <= 3 * family.estimate(i).p() + 1e-12);
            }
        }
    }

    @Test
    void loadingsAreFoundWhereThereAreAny() {
        double[] two = Loadings.of(new double[][] {{1, -0.36}, {-0.36, 1}}).orElseThrow();
        assertEquals(0.6, two[0], 1e-15);
        double[][] product = {{1, 0.5 * 0.6, 0.5 * 0.7}, {0.5 * 0.6, 1, 0.6 * 0.7}, {0.5 * 0.7, 0.6 * 0.7, 1}};
        double[] three = Loadings.of(product).orElseThrow();
        assertEquals(0.7, three[2], 1e-14);
        double[][] none = {{1, 0.9, 0.1, 0.1}, {0.9, 1, 0.1, 0.1}, {0.1, 0.1, 1, 0.9}, {0.1, 0.1, 0.9, 1}};
        assertTrue(Loadings.of(none).isEmpty());
    }

    /** {@code p.adjust} of R 4.2.2 on the unadjusted p values of the four changes. */
    @Test
    void holmOfTheFourChangesIsThatOfR() {
        List<String> changes = List.of("fan_max", "paste", "stand", "chilled");
        double[] plain = changes.stream().mapToDouble(change -> expected("dunnett_two_sided", change + ":p_unadjusted")).toArray();
        double[] adjusted = Holm.adjusted(plain);
        for (int i = 0; i < adjusted.length; i++) {
            Close.relative(expected("holm", changes.get(i) + ":p_adjusted"), adjusted[i], 1e-11, changes.get(i));
        }
    }

    /** R 4.2.2: {@code p.adjust(c(.01, .04, .03, .005), "holm")}. */
    @Test
    void holmIsThatOfR() {
        double[] adjusted = Holm.adjusted(0.01, 0.04, 0.03, 0.005);
        double[] expected = {0.03, 0.06, 0.06, 0.02};
        for (int i = 0; i < 4; i++) {
            assertEquals(expected[i], adjusted[i], 1e-15);
        }
        assertEquals(1, Holm.adjusted(0.9, 0.8)[0]);
    }

    @Test
    void refusesWhatItCannotAnswer() {
        assertThrows(IllegalArgumentException.class, () -> Holm.adjusted(Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> ManyToOne.ofGroups(new double[] {1}, List.of(new double[] {2}, new double[] {3})));
        assertThrows(IllegalArgumentException.class, () -> ManyToOne.ofGroups(CONTROL, List.of()));
    }
}
