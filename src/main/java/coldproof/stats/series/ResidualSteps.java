package coldproof.stats.series;

import coldproof.stats.Argument;
import coldproof.stats.DotProduct;
import coldproof.stats.model.LeastSquares;
import java.util.Arrays;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.EigenDecomposition;

/**
 * Von Neumann's ratio of the residuals of a linear model, {@code e'Ae / e'e}, A the squared steps between neighbours of the same run. Fitted effects and
 * short runs pull neighbouring residuals apart, so that the ratio of independent noise is no longer about 2; the p value here takes that in and is exact
 * for independent normal noise (J. Durbin and G. S. Watson's ratio with runs).
 *
 * @param ratio the ratio
 * @param expected what it would be on average for independent noise
 * @param lagOne autocorrelation of neighbouring noise, roughly: {@code 1 - ratio / expected}, in [-1, 1]
 * @param pLow probability of a ratio at most as large for independent normal noise
 * @see "J. Durbin, G. S. Watson, Biometrika 37 (1950) 409-428 and 58 (1971) 1-19 (from memory)"
 */
public record ResidualSteps(double ratio, double expected, double lagOne, double pLow) {
    /** Most residuals looked at: the cost grows with the third power. */
    public static final int MOST = 200;

    /**
     * Tests the residuals of the least-squares fit of scores on columns.
     *
     * @param scores in order, 4 to {@link #MOST}, finite
     * @param columns of the model, each as long as the scores; columns that add nothing are skipped
     * @param run label of the run of each score: only neighbours of one run make a step
     * @throws IllegalArgumentException if lengths differ, there are too few or too many scores, no two scores are neighbours, or the model leaves no
     *     residual
     */
    public static ResidualSteps of(double[] scores, double[][] columns, int[] run) {
        int n = Argument.atLeast("number of scores", scores.length, 4);
        if (n > MOST || run.length != n) {
            throw new IllegalArgumentException(n + " scores with " + run.length + " runs: at most " + MOST + " of each, as many of one as of the other");
        }
        LeastSquares fit = LeastSquares.of(scores, columns);
        double[] residual = fit.residuals();
        double squares = fit.residualSquares();
        if (fit.isExact()) {
            throw new IllegalArgumentException("the model leaves no residual");
        }
        double ratio = DotProduct.of(residual, steps(residual, run)) / squares;
        double[] eigenvalues = eigenvalues(fit, run, n);
        double mean = 0;
        double[] weights = new double[eigenvalues.length];
        for (int i = 0; i < weights.length; i++) {
            mean += eigenvalues[i] / weights.length;
            weights[i] = eigenvalues[i] - ratio;
        }
        if (!(mean > 0)) {
            throw new IllegalArgumentException("no two scores are neighbours");
        }
        double lagOne = Math.max(-1, Math.min(1, 1 - ratio / mean));
        return new ResidualSteps(ratio, mean, lagOne, 1 - QuadraticForm.probabilityPositive(weights));
    }

    /** {@code A x}: each value times its number of neighbours, minus the neighbours. */
    private static double[] steps(double[] values, int[] run) {
        double[] out = new double[values.length];
        for (int i = 1; i < values.length; i++) {
            if (run[i] == run[i - 1]) {
                double step = values[i] - values[i - 1];
                out[i] += step;
                out[i - 1] -= step;
            }
        }
        return out;
    }

    /** The eigenvalues of the steps in the space of the residuals: those of {@code M A M} without the zeros of the model's own directions. */
    private static double[] eigenvalues(LeastSquares fit, int[] run, int n) {
        double shift = 8; // above any eigenvalue of A, so that the model's directions are told apart at the top
        Array2DRowRealMatrix matrix = new Array2DRowRealMatrix(n, n);
        for (int j = 0; j < n; j++) {
            double[] unit = new double[n];
            unit[j] = 1;
            double[] left = fit.leftOf(unit);
            double[] column = fit.leftOf(steps(left, run));
            for (int i = 0; i < n; i++) {
                matrix.setEntry(i, j, column[i] + shift * (unit[i] - left[i]));
            }
        }
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < i; j++) {
                double mean = 0.5 * (matrix.getEntry(i, j) + matrix.getEntry(j, i));
                matrix.setEntry(i, j, mean);
                matrix.setEntry(j, i, mean);
            }
        }
        double[] all = new EigenDecomposition(matrix).getRealEigenvalues();
        Arrays.sort(all);
        return Arrays.copyOf(all, fit.degreesOfFreedom());
    }
}
