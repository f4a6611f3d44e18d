package coldproof.stats.distribution;

/**
 * Mixes a central distribution over a Poisson number of extra pairs of degrees of freedom: the noncentral chi-square and F.
 *
 * <p>A tail is {@code sum_j Poisson(j; mean) tail(a + j)}. Lower tails are built downwards and upper tails upwards, so that every step of
 * the recurrence adds and none subtracts.
 */
final class PoissonMixture {
    private static final double NEGLIGIBLE = 1e-18;
    private static final double TINY = 1e-280; // below it a running product may have lost digits to underflow and is computed afresh

    /** A central distribution as a function of its first shape parameter {@code a}. */
    interface Central {
        double lower(double a);

        double upper(double a);

        /** {@code lower(a) - lower(a + 1)}. */
        double step(double a);

        /** {@code step(a + 1) / step(a)}. */
        double ratio(double a);
    }

    private PoissonMixture() {}

    static double lower(Central central, double a, double mean) {
        double mode = Math.floor(mean);
        double j = mode;
        double weight = IncompleteGamma.term(mode, mean);
        double least = NEGLIGIBLE * weight;
        while (weight > least) {
            j++;
            weight *= mean / j;
        }
        double value = central.lower(a + j);
        double step = central.step(a + j);
        double sum = weight * value;
        while (j > 0) {
            weight = weight > TINY ? weight * j / mean : IncompleteGamma.term(j - 1, mean);
            j--;
            step = step > TINY ? step / central.ratio(a + j) : central.step(a + j);
            value += step;
            double term = weight * value;
            sum += term;
            if (j < mode && weight < NEGLIGIBLE * sum) {
                break; // no probability exceeds 1, and the weights fall from here on
            }
        }
        return sum;
    }

    static double upper(Central central, double a, double mean) {
        double mode = Math.floor(mean);
        double j = mode;
        double weight = IncompleteGamma.term(mode, mean);
        double least = NEGLIGIBLE * weight;
        while (j > 0 && weight > least) {
            weight *= j / mean;
            j--;
        }
        double value = central.upper(a + j);
        double step = central.step(a + j);
        double sum = weight * value;
        while (true) {
            value += step;
            step = step > TINY ? step * central.ratio(a + j) : central.step(a + j + 1);
            j++;
            weight = weight > TINY ? weight * mean / j : IncompleteGamma.term(j, mean);
            sum += weight * value;
            if (j > mode && weight <= NEGLIGIBLE * sum) {
                return sum;
            }
        }
    }
}
