package coldproof.stats.distribution;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import coldproof.stats.Close;
import coldproof.stats.ReferenceTable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Normal, Student's t and F: points, tails, and broken degrees of freedom. */
class CentralDistributionsTest {
    /** mpmath 1.3.0, 30 digits: erfc(x / sqrt(2)) / 2. */
    @ParameterizedTest
    @CsvSource({"0.3, 0.38208857781104737", "0.7, 0.24196365222307303", "1, 0.15865525393145705", "3, 0.0013498980316300945",
        "6, 9.8658764503769814e-10", "15, 3.6709661993127509e-51", "30, 4.9067139271481871e-198", "37, 5.7255712225245768e-300"})
    void normalTailsKeepTheirDigits(double x, double tail) {
        Close.relative(tail, Normal.survival(x), 2e-15, x);
        Close.relative(tail, Normal.cdf(-x), 2e-15, x);
        Close.relative(1 - tail, Normal.cdf(x), 2e-16, x);
        Close.relative(x, Normal.upperPoint(tail), 2e-15, x);
        Close.relative(-x, Normal.quantile(tail), 2e-15, x);
    }

    @Test
    void studentsPointsAgreeWithThirtyDigitArithmetic() {
        for (ReferenceTable.Row row : ReferenceTable.read("distribution/student-t-points.csv").rows()) {
            double p = row.number("p");
            double df = row.number("df");
            Close.relative(row.number("t"), StudentT.quantile(p, df), 1e-13, row);
            Close.relative(1 - p, StudentT.survival(row.number("t"), df), 1e-11, row); // 1 - p has lost digits in the table
        }
    }

    /** NIST/SEMATECH e-Handbook of Statistical Methods, section 1.3.6.7.2: upper points, printed to three decimals. */
    @ParameterizedTest
    @CsvSource({"0.025, 10, 2.228", "0.05, 10, 1.812", "0.005, 5, 4.032", "0.001, 20, 3.552", "0.1, 1, 3.078", "0.025, 60, 2.000"})
    void criticalValuesAreThoseOfTheHandbookTable(double tail, double df, double point) {
        assertEquals(point, StudentT.upperPoint(tail, df), 0.0005);
    }

    @Test
    void studentsDistributionHasClosedFormsForOneAndTwoDegrees() {
        for (double t : new double[] {-1e6, -3, -0.2, 0, 1e-9, 0.7, 1, 25, 1e9}) {
            double one = t > 0 ? Math.atan(1 / t) / Math.PI : 0.5 - Math.atan(t) / Math.PI;
            Close.relative(one, StudentT.survival(t, 1), 1e-14, t);
            double root = Math.sqrt(2 + t * t);
            double two = t > 0 ? 1 / (root * (root + t)) : 0.5 - 0.5 * t / root;
            Close.relative(two, StudentT.survival(t, 2), 1e-14, t);
        }
    }

    @ParameterizedTest
    @CsvSource({"0.7", "1", "1.5", "3.3", "8", "47.2", "1000", "1e6", "1e12", "Infinity"})
    void studentsPointsAndTailsAreInverse(double df) {
        for (double p : new double[] {1e-30, 1e-10, 1e-4, 0.02, 0.2, 0.26, 0.4999, 0.5, 0.7, 0.999}) {
            Close.relative(p, StudentT.survival(StudentT.upperPoint(p, df), df), 2e-13, "df " + df + ", p " + p);
        }
    }

    @Test
    void manyDegreesOfFreedomJoinTheNormalDistribution() {
        Close.relative(Normal.survival(3), StudentT.survival(3, 1e15), 1e-12, "df 1e15");
        assertEquals(Normal.survival(3), StudentT.survival(3, Double.POSITIVE_INFINITY), 0);
        Close.relative(Normal.density(1), StudentT.density(1, 1e15), 1e-12, "df 1e15");
    }

    /** R 4.2.2: pf(q, df1, df2, lower.tail = FALSE), 17 digits; the first is the F test of a published split plot (temperature). */
    @ParameterizedTest
    @CsvSource({"2.75484, 2, 3, 0.209320632543639", "11.47976, 3, 9, 0.0019769193872950716", "15.2105, 1, 2, 0.059897946368909716",
        "4.2, 1, 7.31, 0.077896310711554576", "3.3, 2.5, 11.25, 0.066705726207057378", "0.4, 5, 1.7, 0.82275085532001402"})
    void upperTailsOfFAgreeWithAnotherProgram(double f, double numerator, double denominator, double tail) {
        Close.relative(tail, CentralF.survival(f, numerator, denominator), 1e-12, f);
        assertEquals(1 - tail, CentralF.cdf(f, numerator, denominator), 1e-13);
        Close.relative(f, CentralF.quantile(1 - tail, numerator, denominator), 1e-11, f);
    }

    @Test
    void refusesWhatItCannotAnswer() {
        assertEquals("degrees of freedom 0.0 are outside (0, Infinity]",
                assertThrows(IllegalArgumentException.class, () -> StudentT.survival(1, 0)).getMessage());
        assertEquals("probability 1.5 is outside [0.0, 1.0]",
                assertThrows(IllegalArgumentException.class, () -> StudentT.upperPoint(1.5, 3)).getMessage());
        assertThrows(IllegalArgumentException.class, () -> StudentT.cdf(Double.NaN, 3));
        assertThrows(IllegalArgumentException.class, () -> Normal.cdf(Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> Normal.quantile(-0.1));
        assertThrows(IllegalArgumentException.class, () -> CentralF.survival(1, 0, 3));
    }
}
