package coldproof.stats.distribution;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import coldproof.stats.Close;
import coldproof.stats.ReferenceTable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Noncentral F and Owen's Q. */
class NoncentralMixturesTest {
    @Test
    void noncentralFAgreesWithThirtyDigitArithmetic() {
        for (ReferenceTable.Row row : ReferenceTable.read("distribution/noncentral-f.csv").rows()) {
            double x = row.number("x");
            double numerator = row.number("df1");
            double denominator = row.number("df2");
            double noncentrality = row.number("ncp");
            Close.relative(row.number("lower"), NoncentralF.cdf(x, numerator, denominator, noncentrality), 1e-11, row);
            Close.relative(row.number("upper"), NoncentralF.survival(x, numerator, denominator, noncentrality), 1e-11, row);
            double back = NoncentralF.quantile(row.number("lower"), numerator, denominator, noncentrality);
            Close.relative(x, back, 1e-10, row);
        }
    }

    /** With one degree of freedom above, F is the square of t: two programs of ours that share no code. */
    @ParameterizedTest
    @CsvSource({"1.3, 6, 2", "4, 17.5, 3.3", "9, 3, 12", "0.2, 40, 5", "12, 8, 1"})
    void noncentralFIsTheSquareOfNoncentralT(double t, double df, double noncentrality) {
        double square = noncentrality * noncentrality;
        double beyond = NoncentralT.survival(t, df, noncentrality) + NoncentralT.cdf(-t, df, noncentrality);
        Close.relative(beyond, NoncentralF.survival(t * t, 1, df, square), 1e-11, "t " + t);
    }

    /** Cohen, Statistical Power Analysis, 2nd ed. (1988), example 8.1: f 0.28, 4 groups of 20 (from memory); R pwr.anova.test prints
     *  0.5149793, and R itself is good to 1e-9 here. */
    @Test
    void powerOfAnAnalysisOfVarianceIsThatOfTheTextbook() {
        double critical = CentralF.quantile(0.95, 3, 76);
        assertEquals(0.5149792922, NoncentralF.survival(critical, 3, 76, 80 * 0.28 * 0.28), 1e-9);
    }

    /** Documentation of R package PowerTOST, printed with seven digits; the longer figures by R 4.2.2 integrate. */
    @Test
    void owensQIsThatOfPublishedExamples() {
        Close.relative(9.388137454816e-06, OwensQ.value(10, 2.5, 5, 2), 1e-12, "t 2.5");
        assertEquals(0.0526436292, OwensQ.value(10, -2.5, -5, 2), 5e-11);
    }

    @Test
    void owensQWithoutLimitIsNoncentralT() {
        Close.relative(NoncentralT.cdf(2.5, 10, 3), OwensQ.value(10, 2.5, 3, Double.POSITIVE_INFINITY), 1e-14, "no limit");
        assertEquals(0, OwensQ.value(10, 2.5, 3, 0), 0);
    }

    @Test
    void refusesWhatItCannotAnswer() {
        assertEquals("noncentrality -1.0 is outside [0.0, 1000000.0]",
                assertThrows(IllegalArgumentException.class, () -> NoncentralF.cdf(1, 2, 3, -1)).getMessage());
        assertThrows(IllegalArgumentException.class, () -> NoncentralF.survival(Double.NaN, 2, 3, 1));
        assertThrows(IllegalArgumentException.class, () -> OwensQ.value(10, Double.NaN, 1, 1));
        assertThrows(IllegalArgumentException.class, () -> OwensQ.value(10, 1, 1, -1));
    }
}
