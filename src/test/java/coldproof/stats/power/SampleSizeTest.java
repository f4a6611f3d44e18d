package coldproof.stats.power;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.stats.Close;
import coldproof.stats.ReferenceTable;
import coldproof.stats.Tail;
import coldproof.stats.distribution.Root;
import java.util.OptionalDouble;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SampleSizeTest {
    private static final double REFERENCE = 1e-11;

    private static Layout layout(String kind, double cv) {
        double logSd = PowerTest.logSd(cv);
        return kind.equals("paired") ? new Layout.Pairs(Math.sqrt(2) * logSd) : new Layout.TwoGroups(logSd);
    }

    private static void agrees(ReferenceTable.Row row, String count, SampleSize.Smallest found) {
        int expected = row.count(count);
        assertEquals(Allocation.equal(expected), found.allocation(), row::toString);
        Close.relative(row.number("power_at_" + count), found.power(), REFERENCE, row);
        String before = "power_at_" + count + "_minus_1";
        assertEquals(expected > 2, found.powerWithOneFewer().isPresent(), row::toString);
        if (expected > 2) {
            Close.relative(row.number(before), found.powerWithOneFewer().getAsDouble(), REFERENCE, row);
        }
    }

    @Test
    void trialsAgreeWithThirtyDigitArithmetic() {
        for (ReferenceTable.Row row : ReferenceTable.read("power/required-trials.csv").rows()) {
            Tail tail = PowerTest.tail(row);
            Claim claim = new Claim.Difference(Math.log1p(row.number("pct") / 100), row.number("alpha"), tail);
            agrees(row, "n", SampleSize.smallest(claim, layout(row.text("kind"), row.number("cv")), row.number("target")));
        }
    }

    /** The real-valued sizes of the table, recovered from the power of a broken number of trials. */
    @Test
    void realValuedSizesAgree() {
        for (ReferenceTable.Row row : ReferenceTable.read("power/required-trials.csv").rows()) {
            if (!row.has("n_real") || row.number("n_real") < 2.1) {
                continue; // fewer than one degree of freedom, or none given
            }
            boolean paired = row.text("kind").equals("paired");
            double ratio = Math.log1p(row.number("pct") / 100) / PowerTest.logSd(row.number("cv"));
            double real = Root.between(n -> Power.ofT(ratio * Math.sqrt(n / 2), paired ? n - 1 : 2 * n - 2, row.number("alpha"),
                    PowerTest.tail(row)) - row.number("target"), paired ? 2 : 1.5, 1e4);
            Close.relative(row.number("n_real"), real, 1e-10, row); // solved on both sides
        }
    }

    @Test
    void sessionsAgreeWithThirtyDigitArithmetic() {
        for (ReferenceTable.Row row : ReferenceTable.read("power/required-sessions.csv").rows()) {
            Claim claim = new Claim.Difference(Math.log1p(row.number("pct") / 100), row.number("alpha"), PowerTest.tail(row));
            Layout layout = new Layout.Sessions(PowerTest.logSd(row.number("cv_session")), PowerTest.logSd(row.number("cv_run")),
                    row.count("r"));
            agrees(row, "k", SampleSize.smallest(claim, layout, row.number("target")));
        }
    }

    @Test
    void equivalenceAgreesWithThirtyDigitArithmetic() {
        for (ReferenceTable.Row row : ReferenceTable.read("power/required-equivalence.csv").rows()) {
            double margin = row.number("margin_pct") / 100;
            double low = row.text("margins").equals("log_symmetric") ? -Math.log1p(margin) : Math.log1p(-margin);
            Claim claim = new Claim.Equivalence(Math.log1p(row.number("pct") / 100), low, Math.log1p(margin), row.number("alpha"));
            agrees(row, "n", SampleSize.smallest(claim, layout(row.text("design"), row.number("cv")), row.number("target")));
        }
    }

    @Test
    void detectableEffectsAgreeWithThirtyDigitArithmetic() {
        for (ReferenceTable.Row row : ReferenceTable.read("power/detectable.csv").rows()) {
            double effect = DetectableEffect.smallest(layout(row.text("kind"), row.number("cv")), Allocation.equal(row.count("n")),
                    row.number("alpha"), PowerTest.tail(row), row.number("target"));
            Close.relative(row.number("delta_log"), effect, REFERENCE, row);
        }
    }

    /** J. Cohen, Statistical Power Analysis, 2nd ed. (1988), table 2.4 (from memory): 80 %, 5 % two-sided; at 0.2 R gives 393.4. */
    @ParameterizedTest
    @CsvSource({"0.2, 394", "0.5, 64", "0.8, 26"})
    void sizesAreThoseOfTheTextbook(double effect, int perGroup) {
        Claim claim = new Claim.Difference(effect, 0.05, Tail.TWO);
        assertEquals(perGroup, SampleSize.smallest(claim, new Layout.TwoGroups(1), 0.8).allocation().baseline());
    }

    /** Hauschke, Steinijans and Pigeot, Bioequivalence Studies (2007), table 5.1, as in the data set of R package PowerTOST: 80 %,
     *  margins 0.80 to 1.25, total n of a crossover (even), ratios 0.90, 0.95, 1.00, 1.05. */
    @ParameterizedTest
    @CsvSource({"0.10, 12, 8, 6, 8", "0.15, 22, 12, 10, 12", "0.20, 38, 20, 16, 18", "0.25, 56, 28, 24, 28", "0.30, 80, 40, 32, 38"})
    void crossoverSizesAreThoseOfThePublishedTable(double cv, int at90, int at95, int at100, int at105) {
        double[] ratios = {0.90, 0.95, 1.00, 1.05};
        int[] published = {at90, at95, at100, at105};
        for (int i = 0; i < ratios.length; i++) {
            Claim claim = new Claim.Equivalence(Math.log(ratios[i]), Math.log(0.8), Math.log(1.25), 0.05);
            int total = 4;
            while (claim.power(PowerTest.logSd(100 * cv) * Math.sqrt(2.0 / total), total - 2) < 0.8) {
                total += 2;
            }
            assertEquals(published[i], total, "CV " + cv + ", ratio " + ratios[i]);
        }
    }

    /** Ready reckoner recomputed with R 4.2.2 power.t.test: trials per group for 80 % and 90 %. */
    @ParameterizedTest
    @CsvSource({"1, 0.5, 6, 7", "1, 2, 65, 86", "2, 1, 6, 7", "3, 3, 18, 23", "5, 0.5, 2, 2", "5, 3, 8, 10"})
    void theReadyReckonerHolds(double percent, double cv, int at80, int at90) {
        Claim claim = new Claim.Difference(Math.log1p(percent / 100), 0.05, Tail.TWO);
        Layout layout = new Layout.TwoGroups(PowerTest.logSd(cv));
        assertEquals(at80, SampleSize.smallest(claim, layout, 0.8).allocation().baseline());
        assertEquals(at90, SampleSize.smallest(claim, layout, 0.9).allocation().baseline());
    }

    @Test
    void theAnswerIsTheSmallestForEveryLayoutClaimAndRatio() {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(20260114);
        for (int i = 0; i < 300; i++) {
            double effect = 0.002 + 0.08 * random.nextDouble();
            double alpha = new double[] {0.01, 0.05, 0.1}[random.nextInt(3)];
            Tail tail = Tail.values()[random.nextInt(2)];
            Claim claim = random.nextBoolean() ? new Claim.Difference(effect, alpha, tail)
                    : Claim.Equivalence.within(effect, effect * 0.9 * (2 * random.nextDouble() - 1), alpha);
            double sd = 0.002 + 0.03 * random.nextDouble();
            Layout layout = new Layout[] {new Layout.TwoGroups(sd), new Layout.Pairs(sd), new Layout.Sessions(sd, 0.5 * sd, 3)}[random.nextInt(3)];
            double ratio = layout.isPaired() ? 1 : new double[] {0.3, 1, 1, 2.5}[random.nextInt(4)];
            double power = 0.5 + 0.49 * random.nextDouble();
            SampleSize.Smallest size = SampleSize.smallest(claim, layout, ratio, power);
            String where = claim + ", " + layout + ", ratio " + ratio + ", power " + power + ": " + size;
            assertEquals(Power.of(claim, layout, size.allocation()), size.power(), 0, where);
            assertTrue(size.power() >= power, where);
            int fewer = size.allocation().baseline() - 1;
            if (fewer < 2) {
                assertEquals(OptionalDouble.empty(), size.powerWithOneFewer(), where);
            } else {
                double before = Power.of(claim, layout, Allocation.ofRatio(fewer, ratio, 2));
                assertEquals(before, size.powerWithOneFewer().getAsDouble(), 0, where);
                assertTrue(before < power, where);
            }
        }
    }

    @Test
    void aMarginOfEquivalenceIsFoundAgain() {
        Layout layout = new Layout.Sessions(0.008, 0.012, 4);
        Allocation allocation = new Allocation(5, 4);
        double margin = DetectableEffect.smallestMargin(layout, allocation, 0.004, 0.05, 0.9);
        Close.relative(0.9, Power.of(Claim.Equivalence.within(margin, 0.004, 0.05), layout, allocation), 1e-12, margin);
    }

    @Test
    void refusesWhatNoNumberOfUnitsReaches() {
        Layout layout = new Layout.TwoGroups(0.01);
        String none = assertThrows(IllegalArgumentException.class,
                () -> SampleSize.smallest(new Claim.Difference(0, 0.05, Tail.TWO), layout, 0.9)).getMessage();
        assertTrue(none.startsWith("no number of units shows"), none);
        assertThrows(IllegalArgumentException.class, () -> SampleSize.smallest(Claim.Equivalence.within(0.02, 0.03, 0.05), layout, 0.9));
        assertThrows(IllegalArgumentException.class, () -> SampleSize.smallest(new Claim.Difference(1e-9, 0.05, Tail.TWO), layout, 0.9));
        assertThrows(IllegalArgumentException.class, () -> SampleSize.smallest(new Claim.Difference(0.1, 0.05, Tail.TWO), layout, 1));
        assertThrows(IllegalArgumentException.class,
                () -> SampleSize.smallest(new Claim.Difference(0.1, 0.05, Tail.TWO), new Layout.Pairs(0.1), 2, 0.9));
    }
}
