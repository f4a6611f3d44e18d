package coldproof.stats.model;

import coldproof.stats.DotProduct;

/** Symmetric matrices of the size of a model (a few columns), row by row in {@code double[size][size]}. */
final class SmallMatrix {
    private SmallMatrix() {}

    /**
     * Replaces the lower triangle by the Cholesky factor L with {@code L L' = a}.
     *
     * @return log determinant of {@code a}
     * @throws IllegalArgumentException if the matrix is not positive definite
     */
    static double factor(double[][] a) {
        double logDeterminant = 0;
        for (int j = 0; j < a.length; j++) {
            for (int i = j; i < a.length; i++) {
                double sum = a[i][j];
                for (int k = 0; k < j; k++) {
                    sum -= a[i][k] * a[j][k];
                }
                if (i > j) {
                    a[i][j] = sum / a[j][j];
                } else if (sum > 0) {
                    a[j][j] = Math.sqrt(sum);
                    logDeterminant += 2 * Math.log(a[j][j]);
                } else {
                    throw new IllegalArgumentException("the matrix is not positive definite: pivot " + j + " is " + sum);
                }
            }
        }
        return logDeterminant;
    }

    /** Inverse of the matrix whose Cholesky factor is given. */
    static double[][] inverseOfFactored(double[][] factor) {
        int p = factor.length;
        double[][] lower = new double[p][p];
        for (int j = 0; j < p; j++) {
            lower[j][j] = 1 / factor[j][j];
            for (int i = j + 1; i < p; i++) {
                double sum = 0;
                for (int k = j; k < i; k++) {
                    sum -= factor[i][k] * lower[k][j];
                }
                lower[i][j] = sum / factor[i][i];
            }
        }
        double[][] inverse = new double[p][p];
        for (int i = 0; i < p; i++) {
            for (int j = 0; j <= i; j++) {
                double sum = 0;
                for (int k = i; k < p; k++) {
                    sum += lower[k][i] * lower[k][j];
                }
                inverse[i][j] = sum;
                inverse[j][i] = sum;
            }
        }
        return inverse;
    }

    /** Inverse of a symmetric positive definite matrix, which is left as it was. */
    static double[][] inverse(double[][] a) {
        double[][] copy = new double[a.length][];
        for (int i = 0; i < a.length; i++) {
            copy[i] = a[i].clone();
        }
        factor(copy);
        return inverseOfFactored(copy);
    }

    static double[] times(double[][] a, double[] x) {
        double[] product = new double[a.length];
        for (int i = 0; i < a.length; i++) {
            product[i] = DotProduct.of(a[i], x);
        }
        return product;
    }

    static double[][] times(double[][] a, double[][] b) {
        double[][] product = new double[a.length][b[0].length];
        for (int i = 0; i < a.length; i++) {
            for (int k = 0; k < b.length; k++) {
                double factor = a[i][k];
                for (int j = 0; j < b[0].length; j++) {
                    product[i][j] += factor * b[k][j];
                }
            }
        }
        return product;
    }

    static double[][] transpose(double[][] a) {
        double[][] transposed = new double[a[0].length][a.length];
        for (int i = 0; i < a.length; i++) {
            for (int j = 0; j < a[0].length; j++) {
                transposed[j][i] = a[i][j];
            }
        }
        return transposed;
    }

    /** {@code x' a y}. */
    static double form(double[] x, double[][] a, double[] y) {
        double sum = 0;
        for (int i = 0; i < x.length; i++) {
            sum += x[i] * DotProduct.of(a[i], y);
        }
        return sum;
    }

    /** Trace of {@code a b}. */
    static double traceOfProduct(double[][] a, double[][] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            for (int j = 0; j < b.length; j++) {
                sum += a[i][j] * b[j][i];
            }
        }
        return sum;
    }
}
