package coldproof.stats.model;

import coldproof.stats.DotProduct;
import java.util.Arrays;

/**
 * Variances of contrasts and what is known about the variances' own uncertainty. The covariance is written as
 * {@code V = t0 H + t1 V1 + t2 V2} about its estimate {@code (run variance, 0, 0)}, a linear change of parameters under which both methods are
 * invariant and in which nothing cancels. All entries here are in units of the run variance.
 */
final class ContrastCovariance {
    private final ProfilePoint point;
    private final double runVariance;
    private final int residualDegrees;
    private final double[][] inverse;
    private final double[][] adjusted;
    /** Inverse of {@code tr(P V_i P V_j)}: half the asymptotic covariance of the parameters by expected information. */
    private final double[][] expected;

    ContrastCovariance(ProfilePoint point, int residualDegrees, double runVariance) {
        this.point = point;
        this.runVariance = runVariance;
        this.residualDegrees = residualDegrees;
        inverse = point.inverse;
        expected = SmallMatrix.inverse(expectedInformation());
        adjusted = adjust();
    }

    private double[][] expectedInformation() {
        int size = point.components + 1;
        double[][] information = new double[size][size];
        information[0][0] = residualDegrees;
        for (int k = 1; k < size; k++) {
            information[0][k] = point.trace[k - 1];
            information[k][0] = point.trace[k - 1];
            for (int l = 1; l < size; l++) {
                information[k][l] = point.traceOfPair(k - 1, l - 1);
            }
        }
        return information;
    }

    private double[][] adjust() {
        int p = inverse.length;
        double[][] inner = new double[p][p];
        for (int k = 0; k < point.components; k++) {
            for (int l = 0; l < point.components; l++) {
                double weight = 2 * expected[k + 1][l + 1];
                double[][] through = point.crossThrough(k, l);
                double[][] product = SmallMatrix.times(SmallMatrix.times(point.crossSquares(k), inverse), point.crossSquares(l));
                for (int i = 0; i < p; i++) {
                    for (int j = 0; j < p; j++) {
                        inner[i][j] += weight * (through[i][j] - product[i][j]);
                    }
                }
            }
        }
        double[][] correction = SmallMatrix.times(SmallMatrix.times(inverse, inner), inverse);
        double[][] result = new double[p][p];
        for (int i = 0; i < p; i++) {
            for (int j = 0; j < p; j++) {
                result[i][j] = inverse[i][j] + correction[i][j] + correction[j][i];
            }
        }
        return result;
    }

    double variance(double[] l) {
        return runVariance * SmallMatrix.form(l, inverse, l);
    }

    double adjustedVariance(double[] l) {
        return runVariance * SmallMatrix.form(l, adjusted, l);
    }

    double[][] variances(double[][] rows, boolean withAdjustment) {
        double[][] covariance = withAdjustment ? adjusted : inverse;
        double[][] result = SmallMatrix.times(SmallMatrix.times(rows, covariance), SmallMatrix.transpose(rows));
        for (double[] row : result) {
            for (int j = 0; j < row.length; j++) {
                row[j] *= runVariance;
            }
        }
        return result;
    }

    /** Gradient of {@code l'(X'V^-1 X)^-1 l} with respect to the parameters. */
    private double[] gradient(double[] l) {
        double[] solved = SmallMatrix.times(inverse, l);
        double[] gradient = new double[point.components + 1];
        gradient[0] = DotProduct.of(l, solved);
        for (int k = 0; k < point.components; k++) {
            gradient[k + 1] = SmallMatrix.form(solved, point.crossSquares(k), solved);
        }
        return gradient;
    }

    double kenwardRogerDegrees(double[] l) {
        double[] gradient = gradient(l);
        return gradient[0] * gradient[0] / SmallMatrix.form(gradient, expected, gradient);
    }

    double satterthwaiteDegrees(double[] l) {
        double[] all = gradient(l);
        int[] estimated = estimatedComponents();
        double[][] information = new double[estimated.length + 1][estimated.length + 1];
        double[] gradient = new double[estimated.length + 1];
        information[0][0] = residualDegrees;
        gradient[0] = all[0];
        for (int i = 0; i < estimated.length; i++) {
            int k = estimated[i];
            gradient[i + 1] = all[k + 1];
            information[0][i + 1] = 2 * point.scoreSquares(k) / runVariance - point.trace[k];
            information[i + 1][0] = information[0][i + 1];
            for (int j = 0; j < estimated.length; j++) {
                int m = estimated[j];
                information[i + 1][j + 1] = 2 * point.formOfPair(k, m) / runVariance - point.traceOfPair(k, m);
            }
        }
        return gradient[0] * gradient[0] / SmallMatrix.form(gradient, SmallMatrix.inverse(information), gradient);
    }

    private int[] estimatedComponents() {
        int count = 0;
        int[] indices = new int[point.components];
        double[] ratios = point.ratios();
        for (int k = 0; k < ratios.length; k++) {
            if (ratios[k] > 0) {
                indices[count++] = k;
            }
        }
        return Arrays.copyOf(indices, count);
    }

    /** {@code Theta}-free pieces of Kenward and Roger's A1 and A2 for the hypothesis with the given rows. */
    double[] kenwardRogerSums(double[][] rows) {
        double[][] middle = SmallMatrix.inverse(
                SmallMatrix.times(SmallMatrix.times(rows, inverse), SmallMatrix.transpose(rows)));
        double[][] solved = SmallMatrix.times(rows, inverse);
        double[][][] pieces = new double[point.components + 1][][];
        for (int k = 0; k <= point.components; k++) {
            double[][] form = k == 0 ? SmallMatrix.times(solved, SmallMatrix.transpose(rows))
                    : SmallMatrix.times(SmallMatrix.times(solved, point.crossSquares(k - 1)), SmallMatrix.transpose(solved));
            pieces[k] = SmallMatrix.times(middle, form);
        }
        double a1 = 0;
        double a2 = 0;
        for (int k = 0; k < pieces.length; k++) {
            for (int l = 0; l < pieces.length; l++) {
                double weight = 2 * expected[k][l];
                a1 += weight * trace(pieces[k]) * trace(pieces[l]);
                a2 += weight * SmallMatrix.traceOfProduct(pieces[k], pieces[l]);
            }
        }
        return new double[] {a1, a2};
    }

    private static double trace(double[][] a) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i][i];
        }
        return sum;
    }
}
