package coldproof.stats.propagation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import coldproof.stats.distribution.StudentT;
import org.junit.jupiter.api.Test;

class CombinationTest {
    private static final double INFINITE = Double.POSITIVE_INFINITY;

    /**
     * JCGM 100:2008, annex H.1, table H.1: calibration of an end gauge of 50 mm. The components with their degrees of freedom, in nm: standard
     * 25 (18), repeated observations 5.8 (24), random effects of the comparator 3.9 (5), its systematic effects 6.7 (8), difference of the
     * expansion coefficients 2.9 (50), difference of the temperatures 16.6 (2).
     */
    private static Combination endGauge() {
        double[][] parts = {{25, 18}, {5.8, 24}, {3.9, 5}, {6.7, 8}, {2.9, 50}, {16.6, 2}};
        Combination length = Combination.of(new Quantity("length", 50_000_838, 0, INFINITE));
        for (int i = 0; i < parts.length; i++) {
            length = length.plus(1, Combination.of(new Quantity("part " + i, 0, parts[i][0], parts[i][1])));
        }
        return length;
    }

    /** JCGM 100:2008, H.1.5 and H.1.6: combined standard uncertainty 32 nm, 16 effective degrees of freedom, expanded (99 %) 93 nm. */
    @Test
    void theEndGaugeOfTheGuideHasItsUncertainty() {
        assertEquals(32, endGauge().standardUncertainty(), 0.5); // half of the last printed digit
        assertEquals(16, Math.floor(endGauge().degreesOfFreedom()), 0); // the guide cuts 16.7 down to 16
        double expanded = StudentT.upperPoint(0.005, 16) * 32; // as the guide computes it, from the rounded figures
        assertEquals(93, expanded, 0.5);
        assertEquals(50_000_838, endGauge().estimate(), 0);
    }

    /** JCGM 100:2008, table G.2: 99 % coverage at 16 degrees of freedom, 2.92. */
    @Test
    void theCoverageFactorIsThatOfTheGuidesTable() {
        assertEquals(2.92, StudentT.upperPoint(0.005, 16), 0.005);
    }

    @Test
    void aQuantityUsedTwiceIsOneError() {
        Combination power = Combination.of(new Quantity("power", 3, 0.1, 4));
        assertEquals(0, power.plus(-1, power).standardUncertainty(), 0);
        assertEquals(0.2, power.plus(1, power).standardUncertainty(), 1e-15);
        assertEquals(4, power.plus(1, power).degreesOfFreedom(), 1e-12);
    }

    @Test
    void independentErrorsAddInSquares() {
        Combination sum = Combination.of(new Quantity("a", 1, 0.3, INFINITE)).plus(-2, Combination.of(new Quantity("b", 5, 0.2, INFINITE)));
        assertEquals(-9, sum.estimate(), 1e-15);
        assertEquals(0.5, sum.standardUncertainty(), 1e-15);
        assertEquals(INFINITE, sum.degreesOfFreedom(), 0);
        assertEquals(0.5 * 1.959963984540054, sum.interval(0.95).high() + 9, 1e-12); // 97.5 % point of the normal distribution
    }

    @Test
    void twoQuantitiesOfOneNameAreRefused() {
        Combination one = Combination.of(new Quantity("a", 1, 0.3, 4));
        assertThrows(IllegalArgumentException.class, () -> one.plus(1, Combination.of(new Quantity("a", 2, 0.3, 4))));
    }
}
