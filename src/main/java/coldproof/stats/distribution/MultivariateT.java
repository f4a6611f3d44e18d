package coldproof.stats.distribution;

import coldproof.stats.Argument;
import coldproof.stats.Tail;
import java.util.Arrays;

/**
 * The multivariate t distribution whose correlations have one factor, {@code rho_ij = loading_i loading_j}: several comparisons with one
 * baseline that share its noise and one estimate of the variance. Immutable.
 *
 * <p>Given the common factor {@code z} and the ratio {@code s} of estimated to true standard deviation the comparisons are independent, so
 * the probability that none lies beyond its bound is a double integral; it is taken as one minus that under the integral, as a sum of
 * positive terms, so that a small p value keeps its digits. Quadrature, tested to 1e-9.
 *
 * @see "C. W. Dunnett, Biometrics 20 (1964) 482-491; for unequal groups the same integral with loading sqrt(n_i / (n_i + n_0))"
 */
public final class MultivariateT {
    private static final double REACH = 9; // of the common factor, in standard deviations: 1e-19 lies beyond
    /** Step of the trapezoidal rule in standard deviations of the sharpest bend: {@code exp(-(2 pi / step)^2 / 2)} is 1e-14. */
    private static final double STEP = 0.78;

    private final double[] loadings;
    private final double[] scales;
    /** Density of the common factor times step, at equal steps from 0 to its reach. */
    private final double[] weights;
    private final double degreesOfFreedom;

    private MultivariateT(double[] loadings, double degreesOfFreedom) {
        this.loadings = loadings;
        this.degreesOfFreedom = degreesOfFreedom;
        scales = Arrays.stream(loadings).map(l -> 1 / Math.sqrt((1 - l) * (1 + l))).toArray();
        weights = weights();
    }

    private double[] weights() {
        double sharpness = 1;
        for (int i = 0; i < loadings.length; i++) {
            sharpness += loadings[i] * scales[i] * loadings[i] * scales[i];
        }
        int steps = (int) Math.ceil(REACH * Math.sqrt(sharpness) / STEP);
        double[] of = new double[steps + 1];
        for (int i = 0; i <= steps; i++) {
            of[i] = Normal.density(REACH * i / steps) * REACH / steps;
        }
        return of;
    }

    /**
     * The distribution with these loadings.
     *
     * @param loadings one for each comparison, each in [0, 1); {@code sqrt(n_i / (n_i + n_0))} for groups of {@code n_i} against {@code n_0}
     * @param degreesOfFreedom of the variance estimate, 1 or more, infinity allowed
     * @throws IllegalArgumentException if an argument is out of range or NaN, or there is no loading
     */
    public static MultivariateT oneFactor(double[] loadings, double degreesOfFreedom) {
        Argument.atLeast("number of comparisons", loadings.length, 1);
        for (double loading : loadings) {
            if (!(loading >= 0 && loading < 1)) {
                throw new IllegalArgumentException("loading " + loading + " is outside [0, 1)");
            }
        }
        Argument.within("degrees of freedom", degreesOfFreedom, 1, Double.POSITIVE_INFINITY);
        return new MultivariateT(loadings.clone(), degreesOfFreedom);
    }

    /**
     * Probability that at least one comparison lies beyond the bound: for an observed statistic, its adjusted p value.
     *
     * @param bound any number; 0 or more for two tails
     * @param tail {@code ONE}: above the bound; {@code TWO}: farther from 0 than the bound
     * @throws IllegalArgumentException if the bound is out of range or NaN
     */
    public double anyBeyond(double bound, Tail tail) {
        Argument.within("bound", bound, tail == Tail.TWO ? 0 : Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
        if (Double.isInfinite(bound)) {
            return bound > 0 ? 0 : 1;
        }
        if (degreesOfFreedom == Double.POSITIVE_INFINITY) {
            return anyNormalBeyond(bound, tail);
        }
        NormalStep shape = new NormalStep(-bound, 0);
        ChiMixture mixture = new ChiMixture(degreesOfFreedom);
        return mixture.average(s -> anyNormalBeyond(bound * s, tail), shape, Double.POSITIVE_INFINITY, Math.abs(bound), 0);
    }

    /**
     * The bound that at least one comparison exceeds with the given probability.
     *
     * @param probability in (0, 1)
     * @param tail as in {@link #anyBeyond}
     * @throws IllegalArgumentException if the probability is out of range or NaN
     */
    public double bound(double probability, Tail tail) {
        Argument.between("probability", probability, 0, 1);
        double logProbability = Math.log(probability);
        double each = tail.perSide(probability) / loadings.length;
        double bonferroni = StudentT.upperPoint(each, degreesOfFreedom);
        if (loadings.length == 1) {
            return bonferroni;
        }
        double alone = StudentT.upperPoint(tail.perSide(probability), degreesOfFreedom);
        return Root.between(bound -> logProbability - Math.log(anyBeyond(bound, tail)), alone - 1e-9, bonferroni + 1e-9);
    }

    /**
     * Probability that some component of the corresponding multivariate normal vector lies beyond the bound, by the trapezoidal rule: the
     * integrand is smooth and vanishes at both ends. Of two tails it is the same on both sides of 0.
     */
    private double anyNormalBeyond(double bound, Tail tail) {
        int last = weights.length - 1;
        double sum = weights[0] * anyBeyondGiven(0, bound, tail);
        for (int i = 1; i <= last; i++) {
            double z = REACH * i / last;
            double onOtherSide = tail == Tail.ONE ? anyBeyondGiven(-z, bound, tail) : 0;
            double onThisSide = anyBeyondGiven(z, bound, tail);
            sum += weights[i] * (tail == Tail.ONE ? onThisSide + onOtherSide : 2 * onThisSide);
        }
        return sum;
    }

    /**
     * One minus the product over comparisons, built without subtracting: beyond now, given that none was before. Comparisons with the loading of
     * the one before have its probabilities.
     */
    private double anyBeyondGiven(double z, double bound, Tail tail) {
        double none = 1;
        double any = 0;
        double beyond = 0;
        double inside = 1;
        for (int i = 0; i < loadings.length; i++) {
            if (i == 0 || loadings[i] != loadings[i - 1]) {
                beyond = Normal.lower(scales[i] * (loadings[i] * z - bound));
                if (tail == Tail.TWO) {
                    beyond += Normal.lower(scales[i] * (-bound - loadings[i] * z));
                    inside = 1 - beyond;
                } else {
                    inside = Normal.lower(scales[i] * (bound - loadings[i] * z));
                }
            }
            any += none * beyond;
            none *= inside;
        }
        return any;
    }
}
