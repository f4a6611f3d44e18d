package coldproof.stats.series;

import coldproof.stats.distribution.GaussLegendre;

/**
 * Probability that a weighted sum of squares of independent standard normal values is above 0, by inverting its characteristic function:
 * {@code 1/2 + 1/pi integral over u > 0 of sin(theta(u)) / (u rho(u))} with {@code theta = sum atan(w u) / 2} and {@code rho = prod (1 + w^2 u^2)^(1/4)}.
 *
 * @see "J. P. Imhof, Biometrika 48 (1961) 419-426 (from memory)"
 */
final class QuadraticForm {
    private static final double NEGLIGIBLE = 1e-13; // of the integrand times its remaining range

    private QuadraticForm() {}

    /** The probability, to about 1e-10 absolute; weights of mixed sign, at least two of them not 0. */
    static double probabilityPositive(double[] weights) {
        double largest = 0;
        double total = 0;
        int counted = 0;
        for (double weight : weights) {
            total += Math.abs(weight);
            largest = Math.max(largest, Math.abs(weight));
            counted += weight > 0 ? 1 : weight < 0 ? -1 : 0;
        }
        if (largest == 0 || Math.abs(counted) == weights.length) {
            return counted > 0 ? 1 : 0;
        }
        GaussLegendre rule = GaussLegendre.atLeast(24);
        double sum = 0;
        double width = Math.min(0.25 / largest, 4 / total); // at most two radians of phase in the first piece
        double from = 0;
        for (int piece = 0; piece < 4000; piece++) {
            sum += rule.integrate(u -> integrand(weights, u), from, from + width);
            from += width;
            if (1 / size(weights, from) < NEGLIGIBLE) {
                break;
            }
            width *= 1.15; // the integrand flattens as its phase settles
        }
        return Math.min(1, Math.max(0, 0.5 + sum / Math.PI));
    }

    private static double integrand(double[] weights, double u) {
        double phase = 0;
        double logSize = 0;
        for (double weight : weights) {
            double x = weight * u;
            phase += Math.atan(x);
            logSize += Math.log1p(x * x);
        }
        return Math.sin(0.5 * phase) * Math.exp(-0.25 * logSize) / u;
    }

    private static double size(double[] weights, double u) {
        double logSize = 0;
        for (double weight : weights) {
            logSize += Math.log1p(weight * u * weight * u);
        }
        return Math.exp(0.25 * logSize);
    }
}
