package coldproof.stats.series;

import java.util.Optional;

/**
 * How a quantity comes to rest: {@code value(t) = end + (start - end) exp(-t / tau)} by least squares, t from the first value.
 *
 * @param end where it is heading
 * @param start where it began
 * @param tau time constant, in the unit of the times, above 0
 * @param endError standard error of the end
 * @param startError standard error of the start
 * @param tauError standard error of tau; of independent residuals, so that correlated ones make it larger
 * @param residualSquares sum of squared residuals
 */
public record ExponentialApproach(double end, double start, double tau, double endError, double startError, double tauError, double residualSquares) {
    private static final int GRID = 40;
    private static final int FEWEST = 8;

    /**
     * The best approach.
     *
     * @param times rising, finite
     * @param values as many, finite
     * @return the fit; empty with fewer than {@value #FEWEST} values, or where the data show no approach: tau would leave [span / 200, 20 span]
     */
    public static Optional<ExponentialApproach> of(double[] times, double[] values) {
        int n = times.length;
        if (n < FEWEST || !(times[n - 1] > times[0])) {
            return Optional.empty();
        }
        double span = times[n - 1] - times[0];
        double[] t = new double[n];
        for (int i = 0; i < n; i++) {
            t[i] = times[i] - times[0];
        }
        double[] best = null;
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i <= GRID; i++) {
            double tau = span / 100 * Math.pow(1000, (double) i / GRID);
            double[] linear = linear(t, values, tau);
            if (linear[2] < least) {
                least = linear[2];
                best = new double[] {linear[0], linear[1], Math.log(tau)};
            }
        }
        return best == null ? Optional.empty() : LeastSquares.of(ExponentialApproach::curve, t, values, best).filter(fit -> {
            double tau = Math.exp(fit.parameters()[2]);
            return tau > span / 200 && tau < 20 * span;
        }).map(ExponentialApproach::of);
    }

    private static ExponentialApproach of(LeastSquares.Fit fit) {
        double tau = Math.exp(fit.parameters()[2]);
        return new ExponentialApproach(fit.parameters()[0], fit.parameters()[1], tau, fit.errors()[0], fit.errors()[1], tau * fit.errors()[2], fit.residualSquares());
    }

    /** Parameters are end, start and the logarithm of tau, which keeps tau above 0. */
    private static double curve(double t, double[] parameters, double[] slopes) {
        double rate = t / Math.exp(parameters[2]);
        double decay = Math.exp(-rate);
        slopes[0] = 1 - decay;
        slopes[1] = decay;
        slopes[2] = (parameters[1] - parameters[0]) * decay * rate;
        return parameters[0] + (parameters[1] - parameters[0]) * decay;
    }

    /** End, start and sum of squares for a given tau: a straight line in exp(-t / tau). */
    private static double[] linear(double[] t, double[] y, double tau) {
        int n = t.length;
        double meanE = 0;
        double meanY = 0;
        for (int i = 0; i < n; i++) {
            meanE += Math.exp(-t[i] / tau) / n;
            meanY += y[i] / n;
        }
        double see = 0;
        double sey = 0;
        double syy = 0;
        for (int i = 0; i < n; i++) {
            double e = Math.exp(-t[i] / tau) - meanE;
            see += e * e;
            sey += e * (y[i] - meanY);
            syy += (y[i] - meanY) * (y[i] - meanY);
        }
        double slope = see > 0 ? sey / see : 0;
        double end = meanY - slope * meanE;
        return new double[] {end, end + slope, syy - slope * sey};
    }
}
