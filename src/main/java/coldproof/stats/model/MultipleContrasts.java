package coldproof.stats.model;

import coldproof.stats.DotProduct;
import org.apache.commons.math3.linear.EigenDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;

/** F tests of several contrasts at once. */
final class MultipleContrasts {
    private static final double EQUAL_DEGREES = 1e-8; // relative: independent contrasts of one stratum agree to rounding

    private MultipleContrasts() {}

    static FTest satterthwaite(double[][] rows, double[] estimate, ContrastCovariance covariance) {
        int q = rows.length;
        EigenDecomposition eigen = new EigenDecomposition(MatrixUtils.createRealMatrix(covariance.variances(rows, false)));
        double squares = 0;
        double[] degrees = new double[q];
        for (int m = 0; m < q; m++) {
            double[] direction = eigen.getEigenvector(m).toArray();
            double variance = eigen.getRealEigenvalue(m);
            if (!(variance > 0)) {
                throw new IllegalArgumentException("the contrasts depend on each other");
            }
            double along = DotProduct.of(direction, estimate);
            squares += along * along / variance;
            degrees[m] = covariance.satterthwaiteDegrees(SmallMatrix.times(SmallMatrix.transpose(rows), direction));
        }
        return FTest.of(squares / q, q, denominator(degrees));
    }

    /** The df for which an F has the mean that the sum of squared independent t has (Fai and Cornelius 1996). */
    private static double denominator(double[] degrees) {
        double smallest = Double.POSITIVE_INFINITY;
        double largest = 0;
        double sum = 0;
        double expected = 0;
        for (double df : degrees) {
            smallest = Math.min(smallest, df);
            largest = Math.max(largest, df);
            sum += df;
            expected += df / (df - 2);
        }
        if (largest - smallest <= EQUAL_DEGREES * largest) {
            return sum / degrees.length;
        }
        return smallest <= 2 ? 2 : 2 * expected / (expected - degrees.length);
    }

    /** Names as in Kenward and Roger (1997), section 3. */
    static FTest kenwardRoger(double[][] rows, double[] estimate, ContrastCovariance covariance) {
        int q = rows.length;
        double[][] inverse = SmallMatrix.inverse(covariance.variances(rows, true));
        double wald = SmallMatrix.form(estimate, inverse, estimate) / q;
        double[] sums = covariance.kenwardRogerSums(rows);
        double a1 = sums[0];
        double a2 = sums[1];
        if (q == 1) {
            return FTest.of(wald, 1, 2 / a2); // what the general formulas reduce to
        }
        double b = (a1 + 6 * a2) / (2 * q);
        double g = ((q + 1) * a1 - (q + 4) * a2) / ((q + 2) * a2);
        double divisor = 3 * q + 2 * (1 - g);
        double c1 = g / divisor;
        double c2 = (q - g) / divisor;
        double c3 = (q + 2 - g) / divisor;
        double mean = 1 / (1 - a2 / q);
        double spread = 2.0 / q * (1 + c1 * b) / ((1 - c2 * b) * (1 - c2 * b) * (1 - c3 * b));
        double rho = spread / (2 * mean * mean);
        double m = 4 + (q + 2) / (q * rho - 1);
        double scale = m / (mean * (m - 2));
        return FTest.of(scale * wald, q, m);
    }
}
