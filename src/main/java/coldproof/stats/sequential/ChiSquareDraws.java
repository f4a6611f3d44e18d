package coldproof.stats.sequential;

import java.util.random.RandomGenerator;

/**
 * Draws from a chi-square distribution, as twice a gamma variate of half the degrees of freedom.
 *
 * @see "G. Marsaglia, W. W. Tsang, A simple method for generating gamma variables, ACM Transactions on Mathematical Software 26 (2000) 363-372"
 */
final class ChiSquareDraws {
    private final double shape;
    private final double d;
    private final double c;

    /** Degrees of freedom 0 or more, finite; 0 always gives 0. */
    ChiSquareDraws(double degreesOfFreedom) {
        shape = degreesOfFreedom / 2;
        d = (shape < 1 ? shape + 1 : shape) - 1.0 / 3;
        c = 1 / Math.sqrt(9 * d);
    }

    double next(RandomGenerator chance) {
        if (shape == 0) {
            return 0;
        }
        double boost = shape < 1 ? Math.pow(chance.nextDouble(), 1 / shape) : 1;
        while (true) {
            double x = chance.nextGaussian();
            double v = 1 + c * x;
            if (v <= 0) {
                continue;
            }
            v = v * v * v;
            double u = chance.nextDouble();
            if (u < 1 - 0.0331 * x * x * x * x || Math.log(u) < 0.5 * x * x + d * (1 - v + Math.log(v))) {
                return 2 * d * v * boost;
            }
        }
    }
}
