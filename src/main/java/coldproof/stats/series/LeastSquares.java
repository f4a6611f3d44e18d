package coldproof.stats.series;

import java.util.Arrays;
import java.util.Optional;

/**
 * Fits a curve by nonlinear least squares after Levenberg and Marquardt: each step solves the linearised problem with its columns scaled
 * and damped, by orthogonal triangularisation, so that nothing is squared that need not be.
 *
 * @see "J. J. Moré, The Levenberg-Marquardt algorithm: implementation and theory, Lecture Notes in Mathematics 630 (1978) 105-116 (from memory)"
 */
public final class LeastSquares {
    private static final int MOST_STEPS = 20_000;
    private static final double STANDS = 1e-13; // relative change of the sum of squares and of the parameters that counts as none

    private LeastSquares() {}

    /** A curve with its slopes. */
    public interface Curve {
        /**
         * The curve's value.
         *
         * @param x where
         * @param parameters the parameters
         * @param slopes takes the derivative by each parameter
         */
        double at(double x, double[] parameters, double[] slopes);
    }

    /**
     * A fit.
     *
     * @param parameters the best parameters
     * @param errors their standard errors; NaN where the data do not determine them
     * @param residualSquares sum of squared residuals
     * @param degreesOfFreedom values less parameters
     */
    public record Fit(double[] parameters, double[] errors, double residualSquares, int degreesOfFreedom) {}

    /**
     * The parameters with the smallest sum of squares near a start.
     *
     * @param curve the curve
     * @param x where, finite
     * @param y what was measured there, as many and more than there are parameters
     * @param start parameters to begin with
     * @return the fit; empty when no step lowers the sum of squares to a stand within {@value #MOST_STEPS} steps
     * @throws IllegalArgumentException if there are not more values than parameters
     */
    public static Optional<Fit> of(Curve curve, double[] x, double[] y, double[] start) {
        int parameters = start.length;
        if (x.length != y.length || x.length <= parameters) {
            throw new IllegalArgumentException(x.length + " places and " + y.length + " values for " + parameters + " parameters");
        }
        double[] at = start.clone();
        double[][] jacobian = new double[x.length][parameters];
        double[] residuals = new double[x.length];
        double squares = residuals(curve, x, y, at, jacobian, residuals);
        double[] scale = new double[parameters];
        double damping = 1e-3;
        for (int step = 0; step < MOST_STEPS; step++) {
            growScale(jacobian, scale);
            double[] move = solve(jacobian, residuals, scale, damping);
            double[] next = at.clone();
            for (int j = 0; j < parameters; j++) {
                next[j] += move[j];
            }
            double[][] nextJacobian = new double[x.length][parameters];
            double[] nextResiduals = new double[x.length];
            double nextSquares = residuals(curve, x, y, next, nextJacobian, nextResiduals);
            boolean small = isSmall(move, at);
            if (nextSquares <= squares) {
                boolean stands = small && squares - nextSquares <= STANDS * squares;
                at = next;
                jacobian = nextJacobian;
                residuals = nextResiduals;
                squares = nextSquares;
                damping = Math.max(1e-15, damping / 5);
                if (stands) {
                    return Optional.of(finish(at, jacobian, squares));
                }
            } else {
                if (small) {
                    return Optional.of(finish(at, jacobian, squares));
                }
                damping *= 3;
            }
        }
        return Optional.empty();
    }

    private static double residuals(Curve curve, double[] x, double[] y, double[] parameters, double[][] jacobian, double[] residuals) {
        double squares = 0;
        for (int i = 0; i < x.length; i++) {
            residuals[i] = y[i] - curve.at(x[i], parameters, jacobian[i]);
            squares += residuals[i] * residuals[i];
        }
        return Double.isNaN(squares) ? Double.POSITIVE_INFINITY : squares;
    }

    private static void growScale(double[][] jacobian, double[] scale) {
        for (int j = 0; j < scale.length; j++) {
            double norm = 0;
            for (double[] row : jacobian) {
                norm = Math.hypot(norm, row[j]);
            }
            scale[j] = Math.max(scale[j], norm == 0 ? 1 : norm);
        }
    }

    private static boolean isSmall(double[] move, double[] at) {
        for (int j = 0; j < move.length; j++) {
            if (!(Math.abs(move[j]) <= STANDS * (Math.abs(at[j]) + STANDS))) {
                return false;
            }
        }
        return true;
    }

    /** Least squares of {@code [J; sqrt(damping) D] move = [r; 0]} by Householder reflections. */
    private static double[] solve(double[][] jacobian, double[] residuals, double[] scale, double damping) {
        int n = jacobian.length;
        int p = scale.length;
        double[][] a = new double[n + p][];
        double[] b = Arrays.copyOf(residuals, n + p);
        for (int i = 0; i < n; i++) {
            a[i] = jacobian[i].clone();
        }
        for (int j = 0; j < p; j++) {
            a[n + j] = new double[p];
            a[n + j][j] = Math.sqrt(damping) * scale[j];
        }
        triangularise(a, b, p);
        double[] move = new double[p];
        for (int j = p - 1; j >= 0; j--) {
            double rest = b[j];
            for (int k = j + 1; k < p; k++) {
                rest -= a[j][k] * move[k];
            }
            move[j] = a[j][j] == 0 ? 0 : rest / a[j][j];
        }
        return move;
    }

    private static void triangularise(double[][] a, double[] b, int p) {
        int n = a.length;
        for (int j = 0; j < p; j++) {
            double norm = 0;
            for (int i = j; i < n; i++) {
                norm = Math.hypot(norm, a[i][j]);
            }
            if (norm == 0) {
                continue;
            }
            double alpha = a[j][j] > 0 ? -norm : norm;
            double[] v = new double[n];
            v[j] = a[j][j] - alpha;
            double square = v[j] * v[j];
            for (int i = j + 1; i < n; i++) {
                v[i] = a[i][j];
                square += v[i] * v[i];
            }
            for (int k = j; k < p; k++) {
                double dot = 0;
                for (int i = j; i < n; i++) {
                    dot += v[i] * a[i][k];
                }
                for (int i = j; i < n; i++) {
                    a[i][k] -= 2 * dot / square * v[i];
                }
            }
            double dot = 0;
            for (int i = j; i < n; i++) {
                dot += v[i] * b[i];
            }
            for (int i = j; i < n; i++) {
                b[i] -= 2 * dot / square * v[i];
            }
        }
    }

    /** Standard errors from the inverse of the triangle: {@code s^2 (R'R)^-1}. */
    private static Fit finish(double[] parameters, double[][] jacobian, double squares) {
        int n = jacobian.length;
        int p = parameters.length;
        double[][] a = new double[n][];
        for (int i = 0; i < n; i++) {
            a[i] = jacobian[i].clone();
        }
        triangularise(a, new double[n], p);
        double variance = squares / (n - p);
        double[] errors = new double[p];
        for (int column = 0; column < p; column++) {
            double[] inverse = new double[p];
            for (int j = column; j >= 0; j--) {
                double rest = j == column ? 1 : 0;
                for (int k = j + 1; k <= column; k++) {
                    rest -= a[j][k] * inverse[k];
                }
                inverse[j] = rest / a[j][j];
            }
            for (int j = 0; j <= column; j++) {
                errors[j] += inverse[j] * inverse[j];
            }
        }
        for (int j = 0; j < p; j++) {
            double error = Math.sqrt(variance * errors[j]);
            errors[j] = Double.isFinite(error) ? error : Double.NaN;
        }
        return new Fit(parameters, errors, squares, n - p);
    }
}
