package coldproof.stats.distribution;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import coldproof.stats.Close;
import coldproof.stats.Tail;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MultivariateTTest {
    private static MultivariateT equalGroups(int comparisons, double df) {
        double[] loadings = new double[comparisons];
        Arrays.fill(loadings, Math.sqrt(0.5));
        return MultivariateT.oneFactor(loadings, df);
    }

    /** C. W. Dunnett, JASA 50 (1955) 1096-1121, table 1a: one-sided 5 % points, printed to two decimals. */
    @ParameterizedTest
    @CsvSource({"10, 2.15, 2.34, 2.47, 2.56", "20, 2.03, 2.19, 2.30, 2.39"})
    void oneSidedPointsAreThoseOfThePublishedTable(double df, double two, double three, double four, double five) {
        double[] published = {two, three, four, five};
        for (int k = 2; k <= 5; k++) {
            assertEquals(published[k - 2], equalGroups(k, df).bound(0.05, Tail.ONE), 0.00501); // a printed 2.34 is 2.3376
        }
    }

    /** Recomputed by quadrature in Python 3.11 with SciPy 1.17.1, four decimals. */
    @ParameterizedTest
    @CsvSource({"5, 2, 2.4404, 3.0302", "5, 5, 2.9756, 3.6151", "10, 3, 2.3376, 2.7590", "16, 4, 2.3430, 2.7079", "30, 2, 1.9890, 2.3208",
        "60, 5, 2.2836, 2.5825"})
    void pointsAgreeWithAnotherQuadrature(double df, int comparisons, double oneSided, double twoSided) {
        assertEquals(oneSided, equalGroups(comparisons, df).bound(0.05, Tail.ONE), 0.00005);
        assertEquals(twoSided, equalGroups(comparisons, df).bound(0.05, Tail.TWO), 0.00005);
    }

    @Test
    void oneComparisonIsStudentsTest() {
        for (double loading : new double[] {0, 0.5, 0.95}) {
            MultivariateT one = MultivariateT.oneFactor(new double[] {loading}, 7.5);
            Close.relative(StudentT.survival(2.2, 7.5), one.anyBeyond(2.2, Tail.ONE), 1e-11, loading);
            Close.relative(StudentT.twoSidedP(9, 7.5), one.anyBeyond(9, Tail.TWO), 1e-11, loading);
            Close.relative(StudentT.survival(-1.1, 7.5), one.anyBeyond(-1.1, Tail.ONE), 1e-11, loading);
        }
    }

    @Test
    void withoutCorrelationAndWithKnownVarianceComparisonsAreIndependent() {
        MultivariateT independent = MultivariateT.oneFactor(new double[3], Double.POSITIVE_INFINITY);
        double single = Normal.survival(2);
        Close.relative(1 - Math.pow(1 - single, 3), independent.anyBeyond(2, Tail.ONE), 1e-12, "normal");
    }

    @Test
    void aSmallPKeepsItsDigits() {
        MultivariateT three = equalGroups(3, 12);
        double p = three.anyBeyond(40, Tail.TWO);
        double single = StudentT.twoSidedP(40, 12);
        assertEquals(true, p > single && p < 3 * single, "p " + p + " between one comparison's and the Bonferroni bound");
        assertEquals(12.0, Math.log(p / three.anyBeyond(400, Tail.TWO)) / Math.log(10), 0.05); // the power law of 12 degrees of freedom
    }

    @Test
    void boundAndProbabilityAreInverse() {
        MultivariateT unequal = MultivariateT.oneFactor(new double[] {0.4, 0.75, 0.97}, 4.7);
        for (double p : new double[] {1e-6, 0.01, 0.05, 0.3, 0.9}) {
            Close.relative(p, unequal.anyBeyond(unequal.bound(p, Tail.TWO), Tail.TWO), 1e-9, p);
            Close.relative(p, unequal.anyBeyond(unequal.bound(p, Tail.ONE), Tail.ONE), 1e-9, p);
        }
    }

    @Test
    void refusesWhatItCannotAnswer() {
        assertEquals("loading 1.0 is outside [0, 1)",
                assertThrows(IllegalArgumentException.class, () -> MultivariateT.oneFactor(new double[] {1}, 5)).getMessage());
        assertThrows(IllegalArgumentException.class, () -> MultivariateT.oneFactor(new double[0], 5));
        assertThrows(IllegalArgumentException.class, () -> MultivariateT.oneFactor(new double[] {0.5}, Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> equalGroups(2, 5).anyBeyond(-1, Tail.TWO));
        assertThrows(IllegalArgumentException.class, () -> equalGroups(2, 5).bound(0, Tail.TWO));
    }
}
