package coldproof.stats.model;

import coldproof.stats.DotProduct;
import java.util.function.IntFunction;

/**
 * Columns of a matrix replaced by an orthonormal set that spans the same space, {@code X = Q R}: Gram-Schmidt, each column swept twice so
 * that the set is orthogonal to rounding.
 */
final class OrthonormalColumns {
    private static final double ALIASED = 1e-9; // share of a column's length that must be its own, far above rounding
    private final double[][] q;
    private final double[][] r;

    /**
     * Takes the columns over and overwrites them.
     *
     * @param columns of equal length
     * @param nameOf for the message
     * @throws IllegalArgumentException if a column is a combination of those before it
     */
    OrthonormalColumns(double[][] columns, IntFunction<String> nameOf) {
        int p = columns.length;
        q = columns;
        r = new double[p][p];
        for (int j = 0; j < p; j++) {
            double[] column = q[j];
            double length = Math.sqrt(DotProduct.of(column, column));
            for (int sweep = 0; sweep < 2; sweep++) {
                for (int i = 0; i < j; i++) {
                    double share = DotProduct.of(q[i], column);
                    r[i][j] += share;
                    subtract(column, share, q[i]);
                }
            }
            double own = Math.sqrt(DotProduct.of(column, column));
            if (!(own > ALIASED * length)) {
                throw new IllegalArgumentException("the effects cannot be told apart: " + nameOf.apply(j)
                        + " is a combination of the terms before it (an empty cell, or two names for one thing)");
            }
            r[j][j] = own;
            for (int row = 0; row < column.length; row++) {
                column[row] /= own;
            }
        }
    }

    int count() {
        return q.length;
    }

    double[] column(int j) {
        return q[j];
    }

    /** Removes from {@code values} what the columns explain; returns the coordinates removed. */
    double[] sweep(double[] values) {
        double[] coordinates = new double[q.length];
        for (int pass = 0; pass < 2; pass++) {
            for (int j = 0; j < q.length; j++) {
                double share = DotProduct.of(q[j], values);
                coordinates[j] += share;
                subtract(values, share, q[j]);
            }
        }
        return coordinates;
    }

    /** Solves {@code R'x = contrast}: the contrast expressed in the orthonormal coordinates. */
    double[] contrastInCoordinates(double[] contrast) {
        int p = q.length;
        double[] x = new double[p];
        for (int j = 0; j < p; j++) {
            double sum = contrast[j];
            for (int i = 0; i < j; i++) {
                sum -= r[i][j] * x[i];
            }
            x[j] = sum / r[j][j];
        }
        return x;
    }

    /** Solves {@code R x = coordinates}: the coefficients of the original columns. */
    double[] coefficients(double[] coordinates) {
        int p = q.length;
        double[] x = new double[p];
        for (int j = p - 1; j >= 0; j--) {
            double sum = coordinates[j];
            for (int k = j + 1; k < p; k++) {
                sum -= r[j][k] * x[k];
            }
            x[j] = sum / r[j][j];
        }
        return x;
    }

    /** Natural logarithm of |det R|. */
    double logDeterminant() {
        double sum = 0;
        for (int j = 0; j < q.length; j++) {
            sum += Math.log(r[j][j]);
        }
        return sum;
    }

    private static void subtract(double[] from, double share, double[] column) {
        for (int i = 0; i < from.length; i++) {
            from[i] -= share * column[i];
        }
    }
}
