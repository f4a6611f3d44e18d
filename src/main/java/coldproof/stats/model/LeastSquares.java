package coldproof.stats.model;

import coldproof.stats.Argument;
import coldproof.stats.DotProduct;
import java.util.ArrayList;
import java.util.List;

/**
 * An ordinary least-squares fit seen from its residuals. Columns that add nothing to those before them are skipped, so that a model may be given with more
 * columns than it needs. Immutable.
 */
public final class LeastSquares {
    private static final double ALIASED = 1e-9; // share of a column's length below which it adds nothing to the columns before it

    private static final double EXACT = 1e-24; // share of the scores' squares: residuals of 1e-12 of their size are rounding

    private final double[][] basis;
    private final double[] residuals;
    private final double squares;

    private LeastSquares(double[][] basis, double[] residuals, double squares) {
        this.squares = squares;
        this.basis = basis;
        this.residuals = residuals;
    }

    /**
     * Fits scores by columns.
     *
     * @param scores one or more, finite
     * @param columns each as long as the scores
     * @throws IllegalArgumentException if there is no score, a length differs or a score is not finite
     */
    public static LeastSquares of(double[] scores, double[][] columns) {
        Argument.atLeast("number of scores", scores.length, 1);
        double[][] basis = orthonormal(columns, scores.length);
        double[] residuals = scores.clone();
        for (double score : residuals) {
            Argument.finite("score", score);
        }
        sweep(residuals, basis);
        sweep(residuals, basis); // once more, against rounding
        return new LeastSquares(basis, residuals, DotProduct.of(scores, scores));
    }

    /** What the columns leave of each score; a copy. */
    public double[] residuals() {
        return residuals.clone();
    }

    /** Sum of their squares. */
    public double residualSquares() {
        return DotProduct.of(residuals, residuals);
    }

    /** Whether the columns leave nothing but rounding. */
    public boolean isExact() {
        return !(residualSquares() > EXACT * squares);
    }

    /** How far each score pulls its own fit, in [0, 1]: a residual has the variance {@code (1 - leverage)} of the noise. */
    public double[] leverages() {
        double[] leverages = new double[residuals.length];
        for (double[] direction : basis) {
            for (int i = 0; i < leverages.length; i++) {
                leverages[i] += direction[i] * direction[i];
            }
        }
        return leverages;
    }

    /** Number of columns that count. */
    public int rank() {
        return basis.length;
    }

    /** Scores minus columns that count. */
    public int degreesOfFreedom() {
        return residuals.length - basis.length;
    }

    /** What the columns leave of any other values. */
    public double[] leftOf(double[] values) {
        double[] left = values.clone();
        sweep(left, basis);
        return left;
    }

    private static double[][] orthonormal(double[][] columns, int n) {
        List<double[]> basis = new ArrayList<>();
        for (double[] column : columns) {
            if (column.length != n) {
                throw new IllegalArgumentException("a column of " + column.length + " entries for " + n + " scores");
            }
            double[] left = column.clone();
            double length = Math.sqrt(DotProduct.of(left, left));
            double[][] found = basis.toArray(double[][]::new);
            sweep(left, found);
            sweep(left, found);
            double rest = Math.sqrt(DotProduct.of(left, left));
            if (rest > ALIASED * length) {
                for (int i = 0; i < n; i++) {
                    left[i] /= rest;
                }
                basis.add(left);
            }
        }
        return basis.toArray(double[][]::new);
    }

    private static void sweep(double[] values, double[][] basis) {
        for (double[] direction : basis) {
            double share = DotProduct.of(values, direction);
            for (int i = 0; i < values.length; i++) {
                values[i] -= share * direction[i];
            }
        }
    }
}
