package coldproof.stats.power;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.stats.Close;
import coldproof.stats.ReferenceTable;
import coldproof.stats.Tail;
import coldproof.stats.distribution.Root;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class PowerTest {
    /** Tables of 17 digits are met to 1e-11: one digit more than the accuracy promised. */
    private static final double REFERENCE = 1e-11;

    static Tail tail(ReferenceTable.Row row) {
        return row.count("sides") == 2 ? Tail.TWO : Tail.ONE;
    }

    static double logSd(double cvPercent) {
        return Math.sqrt(Math.log1p(cvPercent * cvPercent / 1e4));
    }

    @Test
    void twoGroupsAndPairsAgreeWithThirtyDigitArithmetic() {
        for (ReferenceTable.Row row : ReferenceTable.read("power/two-groups-and-pairs.csv").rows()) {
            int n = row.count("n");
            double effect = Math.log1p(row.number("pct") / 100);
            double logSd = logSd(row.number("cv"));
            double power = row.text("kind").equals("paired")
                    ? Power.ofPairs(effect, Math.sqrt(2) * logSd, n, row.number("alpha"), tail(row))
                    : Power.ofTwoGroups(effect, logSd, n, n, row.number("alpha"), tail(row));
            Close.relative(row.number("power"), power, REFERENCE, row);
        }
    }

    @Test
    void unequalGroupsAgreeWithThirtyDigitArithmetic() {
        for (ReferenceTable.Row row : ReferenceTable.read("power/unequal-groups.csv").rows()) {
            double power = Power.ofTwoGroups(row.number("delta_log"), row.number("sd_log"), row.count("n1"), row.count("n2"),
                    row.number("alpha"), tail(row));
            Close.relative(row.number("power"), power, REFERENCE, row);
        }
    }

    @Test
    void sessionsAgreeWithThirtyDigitArithmetic() {
        for (ReferenceTable.Row row : ReferenceTable.read("power/sessions.csv").rows()) {
            int sessions = row.count("k");
            double power = Power.ofSessions(Math.log1p(row.number("pct") / 100), logSd(row.number("cv_session")),
                    logSd(row.number("cv_run")), sessions, sessions, row.count("r"), row.number("alpha"), tail(row));
            Close.relative(row.number("power"), power, REFERENCE, row);
        }
    }

    @Test
    void equivalenceAgreesWithThirtyDigitArithmetic() {
        for (ReferenceTable.Row row : ReferenceTable.read("power/equivalence.csv").rows()) {
            Claim claim = new Claim.Equivalence(row.number("delta_log"), row.number("low_log"), row.number("high_log"),
                    row.number("alpha"));
            double logSd = logSd(row.number("cv"));
            Layout layout = row.text("design").equals("paired") ? new Layout.Pairs(Math.sqrt(2) * logSd) : new Layout.TwoGroups(logSd);
            double tolerance = row.number("power") < 1e-10 ? 1e-8 : REFERENCE * 10; // margins are printed with 15 digits
            Close.relative(row.number("power"), Power.of(claim, layout, Allocation.equal(row.count("n"))), tolerance, row);
        }
    }

    /** R power.t.test, help example: n 20, delta 1, sd 1 (from memory: power 0.8689528 without the far tail). R 4.2.2, strict = TRUE. */
    @Test
    void powerIsThatOfTheHelpExample() {
        assertEquals(0.8689528017, Power.ofTwoGroups(1, 1, 20, 20, 0.025, Tail.ONE), 1e-10);
        assertEquals(0.8689530277, Power.ofTwoGroups(1, 1, 20, 20, 0.05, Tail.TWO), 1e-10);
    }

    /** J. Cohen, Statistical Power Analysis, 2nd ed. (1988), example 2.5 (from memory): one sample, d 0.2, n 60, 10 % two-sided. */
    @Test
    void powerOfOneSampleIsThatOfTheTextbook() {
        assertEquals(0.4555817641, Power.ofPairs(0.2, 1, 60, 0.10, Tail.TWO), 1e-5);
    }

    /** Documentation of R package PowerTOST: 2x2 crossover, CV 25 %, n 24 and 22, ratio 0.95, margins 0.80 to 1.25, printed 7 digits. */
    @ParameterizedTest
    @CsvSource({"0.25, 24, 0.7391155", "0.25, 22, 0.6953401", "0.30, 40, 0.8158453", "0.20, 20, 0.8346802"})
    void equivalencePowerOfACrossoverIsThePublishedOne(double cv, int total, double expected) {
        double error = Math.sqrt(Math.log1p(cv * cv)) * Math.sqrt(2.0 / total);
        Claim claim = new Claim.Equivalence(Math.log(0.95), Math.log(0.8), Math.log(1.25), 0.05);
        assertEquals(expected, claim.power(error, total - 2), 5e-8);
    }

    @ParameterizedTest
    @EnumSource(Tail.class)
    void withoutAnEffectPowerIsTheFalseAlarmRate(Tail tail) {
        assertEquals(0.05, Power.ofTwoGroups(0, 0.01, 6, 6, 0.05, tail), 1e-14);
        assertEquals(0.01, Power.ofSessions(0, 0.01, 0.02, 2, 3, 4, 0.01, tail), 1e-14);
    }

    @Test
    void aWrongWayResultCountsAsTwoSidedPowerOnly() {
        double tiny = 0.001;
        double two = Power.ofTwoGroups(tiny, 0.01, 6, 6, 0.05, Tail.TWO);
        double rightWay = Power.ofTwoGroups(tiny, 0.01, 6, 6, 0.025, Tail.ONE);
        assertTrue(two > rightWay + 0.015, two + " against " + rightWay);
    }

    @Test
    void powerDoesNotDependOnTheSignOfTheEffect() {
        for (Tail tail : Tail.values()) {
            assertEquals(Power.ofPairs(0.03, 0.02, 7, 0.05, tail), Power.ofPairs(-0.03, 0.02, 7, 0.05, tail), 0);
        }
        double up = new Claim.Equivalence(0.01, -0.02, 0.03, 0.05).power(0.006, 9);
        assertEquals(up, new Claim.Equivalence(-0.01, -0.03, 0.02, 0.05).power(0.006, 9), 1e-14);
    }

    @Test
    void aSessionWithoutSessionNoiseAndWithOneTrialIsATrial() {
        assertEquals(Power.ofTwoGroups(0.03, 0.012, 4, 7, 0.05, Tail.TWO), Power.ofSessions(0.03, 0, 0.012, 4, 7, 1, 0.05, Tail.TWO), 1e-15);
    }

    @Test
    void moreTrialsPerSessionDoNotPassTheCeilingOfTheSessions() {
        double before = 0;
        double ceiling = Power.ofSessions(0.03, 0.01, 0, 4, 4, 1, 0.05, Tail.TWO);
        for (int trials : new int[] {1, 2, 5, 20, 1000}) {
            double power = Power.ofSessions(0.03, 0.01, 0.01, 4, 4, trials, 0.05, Tail.TWO);
            assertTrue(power > before && power < ceiling, trials + " trials: " + power);
            before = power;
        }
    }

    /** Power ceiling of whole-session factors, recomputed with R 4.2.2 pt(ncp =), three decimals: d 0.03, both sd 0.01. */
    @ParameterizedTest
    @CsvSource({"2, 1, .237", "2, 50, .382", "3, 3, .668", "4, 5, .894", "6, 10, .993"})
    void ceilingsAgreeWithAnotherProgram(int sessions, int trials, double power) {
        assertEquals(power, Power.ofSessions(0.03, 0.01, 0.01, sessions, sessions, trials, 0.05, Tail.TWO), 0.0005);
    }

    @Test
    void eachArgumentIsFoundAgainFromThePower() {
        double effect = 0.03;
        double logSd = 0.012;
        double alpha = 0.05;
        int n = 5;
        for (Tail tail : Tail.values()) {
            double power = Power.ofTwoGroups(effect, logSd, n, n, alpha, tail);
            Close.relative(effect, DetectableEffect.smallest(new Layout.TwoGroups(logSd), Allocation.equal(n), alpha, tail, power), 1e-11,
                    "effect");
            double sd = Root.between(s -> Power.ofTwoGroups(effect, s, n, n, alpha, tail) - power, 0.005, 0.03);
            Close.relative(logSd, sd, 1e-11, "standard deviation");
            double level = Root.between(a -> Power.ofTwoGroups(effect, logSd, n, n, a, tail) - power, 0.001, 0.4);
            Close.relative(alpha, level, 1e-11, "false alarm");
            SampleSize.Smallest size = SampleSize.smallest(new Claim.Difference(effect, alpha, tail), new Layout.TwoGroups(logSd), power);
            assertEquals(Allocation.equal(n), size.allocation());
            assertEquals(power, size.power(), 0);
        }
    }

    @Test
    void refusesWhatItCannotAnswer() {
        assertEquals("false-alarm rate 0.6 is outside (0, 0.5]",
                assertThrows(IllegalArgumentException.class, () -> Power.ofT(1, 5, 0.6, Tail.TWO)).getMessage());
        assertEquals("log standard deviation 0.0 is outside (0.0, Infinity)",
                assertThrows(IllegalArgumentException.class, () -> Power.ofTwoGroups(0.1, 0, 5, 5, 0.05, Tail.TWO)).getMessage());
        assertEquals("1 and 1 units leave no degree of freedom for the noise: one level needs another unit",
                assertThrows(IllegalArgumentException.class, () -> Power.ofTwoGroups(0.1, 0.1, 1, 1, 0.05, Tail.TWO)).getMessage());
        assertThrows(IllegalArgumentException.class, () -> Power.ofPairs(Double.NaN, 0.1, 5, 0.05, Tail.TWO));
        assertThrows(IllegalArgumentException.class, () -> Power.ofPairs(0.1, Double.NaN, 5, 0.05, Tail.TWO));
        assertThrows(IllegalArgumentException.class, () -> Power.ofPairs(0.1, 0.1, 1, 0.05, Tail.TWO));
        assertThrows(IllegalArgumentException.class, () -> Power.ofSessions(0.1, 0, 0, 3, 3, 4, 0.05, Tail.TWO));
        assertThrows(IllegalArgumentException.class, () -> Power.ofSessions(0.1, 0.1, 0.1, 3, 3, 0, 0.05, Tail.TWO));
        assertThrows(IllegalArgumentException.class, () -> new Claim.Equivalence(0, 0.02, 0.01, 0.05));
        assertThrows(IllegalArgumentException.class, () -> new Claim.Equivalence(0, -0.02, 0.02, 0.5));
    }
}
