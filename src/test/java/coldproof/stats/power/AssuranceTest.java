package coldproof.stats.power;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.stats.Tail;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.junit.jupiter.api.Test;

class AssuranceTest {
    private static final Claim GAIN = new Claim.Difference(0.03, 0.05, Tail.TWO);

    /** Against seeded draws from the posterior: 30,000 draws of a power with standard deviation below 0.5, four standard errors. */
    @Test
    void agreesWithDrawsFromThePosterior() {
        Allocation allocation = new Allocation(4, 3);
        double quadrature = Assurance.ofSessions(GAIN, new Assurance.Estimate(0.008, 3), new Assurance.Estimate(0.012, 12), 4, allocation);
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(20260114);
        int draws = 30_000;
        double sum = 0;
        for (int i = 0; i < draws; i++) {
            Layout layout = new Layout.Sessions(0.008 * Math.sqrt(3 / chiSquare(random, 3)), 0.012 * Math.sqrt(12 / chiSquare(random, 12)), 4);
            sum += Power.of(GAIN, layout, allocation);
        }
        assertEquals(sum / draws, quadrature, 4 * 0.5 / Math.sqrt(draws));
    }

    private static double chiSquare(RandomGenerator random, int df) {
        double sum = 0;
        for (int i = 0; i < df; i++) {
            double z = random.nextGaussian();
            sum += z * z;
        }
        return sum;
    }

    /** Python 3.11, numpy 2.4.6, SciPy 1.17.1 (t, norm, gammaln): nested composite Gauss-Legendre over both chi densities, 13 digits. */
    @Test
    void agreesWithAnotherProgram() {
        assertEquals(0.8704104412793, Assurance.ofTwoGroups(GAIN, new Assurance.Estimate(0.012, 5), Allocation.equal(6)), 1e-10);
        assertEquals(0.7943159631907, Assurance.ofPairs(GAIN, new Assurance.Estimate(0.017, 4), Allocation.equal(6)), 1e-10);
        Claim same = Claim.Equivalence.within(Math.log(1.03), 0, 0.05);
        assertEquals(0.8926293946763, Assurance.ofTwoGroups(same, new Assurance.Estimate(0.012, 8), Allocation.equal(6)), 1e-10);
    }

    @Test
    void aPerfectlyKnownNoiseLeavesThePower() {
        Assurance.Estimate known = new Assurance.Estimate(0.012, Double.POSITIVE_INFINITY);
        assertEquals(Power.ofTwoGroups(0.03, 0.012, 5, 5, 0.05, Tail.TWO), Assurance.ofTwoGroups(GAIN, known, Allocation.equal(5)), 0);
        double nearly = Assurance.ofTwoGroups(GAIN, new Assurance.Estimate(0.012, 1e6), Allocation.equal(5));
        assertEquals(Power.ofTwoGroups(0.03, 0.012, 5, 5, 0.05, Tail.TWO), nearly, 1e-5);
    }

    @Test
    void aSmallerPilotCostsAssurance() {
        double before = 0;
        for (double df : new double[] {1, 2, 5, 20, 200}) {
            double assurance = Assurance.ofTwoGroups(GAIN, new Assurance.Estimate(0.012, df), Allocation.equal(6));
            assertTrue(assurance > before, df + " degrees of freedom: " + assurance);
            before = assurance;
        }
        assertTrue(before < Power.ofTwoGroups(0.03, 0.012, 6, 6, 0.05, Tail.TWO));
    }

    @Test
    void refusesWhatItCannotAnswer() {
        assertThrows(IllegalArgumentException.class, () -> new Assurance.Estimate(-0.1, 3));
        assertThrows(IllegalArgumentException.class, () -> new Assurance.Estimate(0.1, 0.5));
        assertThrows(IllegalArgumentException.class,
                () -> Assurance.ofTwoGroups(GAIN, new Assurance.Estimate(0, 3), Allocation.equal(5)));
    }
}
