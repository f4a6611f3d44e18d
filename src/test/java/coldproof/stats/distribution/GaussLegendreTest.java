package coldproof.stats.distribution;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;

class GaussLegendreTest {
    /** M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions, table 25.4, n = 4 and n = 20 (from memory). */
    @Test
    void nodesAndWeightsAreThoseOfTheHandbook() {
        GaussLegendre four = GaussLegendre.ofOrder(4);
        assertEquals(0.861136311594053, four.node(3), 5e-16);
        assertEquals(0.347854845137454, four.weight(3), 5e-16);
        GaussLegendre twenty = GaussLegendre.ofOrder(20);
        assertEquals(0.076526521133497, twenty.node(10), 5e-16);
        assertEquals(0.152753387130726, twenty.weight(10), 5e-16);
    }

    @Test
    void aPolynomialOfTwiceTheOrderIsExact() {
        for (int order : new int[] {2, 3, 24, 40, 64}) {
            double power = 2 * order - 2;
            double integral = GaussLegendre.ofOrder(order).integrate(x -> Math.pow(x, power), -1, 1);
            assertEquals(2 / (power + 1), integral, 1e-15, "order " + order);
        }
    }

    @Test
    void keptRulesHaveAtLeastTheOrderAskedForUpToTheLargest() {
        assertEquals(24, GaussLegendre.atLeast(3).order());
        assertEquals(36, GaussLegendre.atLeast(25).order());
        assertEquals(48, GaussLegendre.atLeast(37).order());
        assertEquals(64, GaussLegendre.atLeast(100).order());
        assertThrows(IllegalArgumentException.class, () -> GaussLegendre.ofOrder(1));
    }
}
