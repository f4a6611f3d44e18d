package coldproof.stats.distribution;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.stats.Close;
import coldproof.stats.ReferenceTable;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.junit.jupiter.api.Test;

class NoncentralTTest {
    private static void agrees(ReferenceTable.Row row, double relative) {
        double t = row.number("t");
        double df = row.number("df");
        double noncentrality = row.number("ncp");
        Close.relative(row.number("upper"), NoncentralT.survival(t, df, noncentrality), relative, row);
        Close.relative(row.number("lower"), NoncentralT.cdf(t, df, noncentrality), relative, row);
    }

    /** The bound on the error is that of the class comment. */
    @Test
    void agreesWithThirtyDigitArithmetic() {
        for (ReferenceTable.Row row : ReferenceTable.read("distribution/noncentral-t.csv").rows()) {
            agrees(row, 1e-12);
        }
    }

    /** Broken degrees of freedom near 1 are the hardest: their density has a root at 0. */
    @Test
    void agreesInFarTailsAndForBrokenDegreesOfFreedom() {
        for (ReferenceTable.Row row : ReferenceTable.read("distribution/noncentral-t-tails.csv").rows()) {
            agrees(row, 1e-11);
        }
    }

    @Test
    void pointsAgreeWithThirtyDigitArithmetic() {
        for (ReferenceTable.Row row : ReferenceTable.read("distribution/noncentral-t-points.csv").rows()) {
            double point = NoncentralT.quantile(row.number("p"), row.number("df"), row.number("ncp"));
            if (row.number("t") == 0) {
                assertEquals(0, point, 1e-14, row::toString); // the median of the central distribution
            } else {
                Close.relative(row.number("t"), point, 1e-11, row);
            }
        }
    }

    @Test
    void withoutNoncentralityItIsStudentsDistribution() {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(20260114);
        for (int i = 0; i < 500; i++) {
            double df = 1 + 200 * Math.pow(random.nextDouble(), 3);
            double t = 12 * random.nextDouble() - 6;
            Close.relative(StudentT.survival(t, df), NoncentralT.survival(t, df, 0), 1e-10, "df " + df + ", t " + t);
        }
    }

    @Test
    void theTwoTailsAddUpToOneAndMirror() {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(7);
        for (int i = 0; i < 500; i++) {
            double df = Math.exp(13 * random.nextDouble());
            double noncentrality = 60 * (2 * random.nextDouble() - 1);
            double t = noncentrality + 6 * random.nextGaussian();
            String where = "df " + df + ", noncentrality " + noncentrality + ", t " + t;
            double lower = NoncentralT.cdf(t, df, noncentrality);
            assertEquals(1, lower + NoncentralT.survival(t, df, noncentrality), 1e-11, where);
            assertEquals(lower, NoncentralT.survival(-t, df, -noncentrality), 0, where);
        }
    }

    @Test
    void aMillionDegreesOfFreedomComeCloseToTheNormalDistribution() {
        double normal = Normal.survival(1.96 - 3);
        double close = NoncentralT.survival(1.96, 1e6, 3);
        assertTrue(Math.abs(close - normal) < 1e-6 && close != normal);
        assertEquals(normal, NoncentralT.survival(1.96, Double.POSITIVE_INFINITY, 3), 0);
    }

    @Test
    void refusesWhatItCannotAnswer() {
        assertEquals("degrees of freedom 0.5 are outside [1, Infinity]",
                assertThrows(IllegalArgumentException.class, () -> NoncentralT.cdf(1, 0.5, 1)).getMessage());
        assertThrows(IllegalArgumentException.class, () -> NoncentralT.cdf(Double.NaN, 5, 1));
        assertThrows(IllegalArgumentException.class, () -> NoncentralT.survival(1, Double.NaN, 1));
        assertThrows(IllegalArgumentException.class, () -> NoncentralT.cdf(1, 5, Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> NoncentralT.quantile(1.2, 5, 1));
    }
}
