package coldproof.stats.multiple;

import coldproof.stats.Argument;
import coldproof.stats.Tail;
import coldproof.stats.distribution.MultivariateT;
import coldproof.stats.interval.ConfidenceInterval;
import coldproof.stats.interval.Moments;
import coldproof.stats.model.Estimate;
import java.util.ArrayList;
import java.util.List;

/**
 * Several changes compared with one baseline at once: Dunnett's many-to-one comparisons. Immutable.
 *
 * <p>The statistics share the mean of the baseline and one estimate of the variance, so they are jointly multivariate t with correlations
 * {@code rho_ij = loading_i loading_j}; for independent groups {@code loading_i = sqrt(n_i / (n_i + n_0))}. The adjusted p value of a change is
 * the probability that any of the statistics lies as far out as its own when nothing changes anything; the simultaneous intervals hold all
 * true changes at once with their level. Verdict and interval come from the same distribution, so they never disagree.
 *
 * @see "C. W. Dunnett, A multiple comparison procedure for comparing several treatments with a control, JASA 50 (1955) 1096-1121"
 * @see "C. W. Dunnett, New tables for multiple comparisons with a control, Biometrics 20 (1964) 482-491"
 */
public final class ManyToOne {
    private final List<Estimate> estimates;
    private final MultivariateT distribution;

    private ManyToOne(List<Estimate> estimates, MultivariateT distribution) {
        this.estimates = List.copyOf(estimates);
        this.distribution = distribution;
    }

    /**
     * Independent groups with one pooled variance, {@code N - groups} degrees of freedom. Groups may differ in size.
     *
     * @param baseline log scores of the baseline, one or more
     * @param against log scores of each change, one or more each
     * @throws IllegalArgumentException if there is no change, a group is empty or holds a value that is not finite, or no degrees of freedom are left
     */
    public static ManyToOne ofGroups(double[] baseline, List<double[]> against) {
        Moments first = Moments.of(baseline);
        List<Moments> others = against.stream().map(Moments::of).toList();
        int degreesOfFreedom = first.count() - 1 + others.stream().mapToInt(group -> group.count() - 1).sum();
        if (degreesOfFreedom < 1) {
            throw new IllegalArgumentException("groups of one value each leave no degrees of freedom");
        }
        double variance = (first.sumOfSquares() + others.stream().mapToDouble(Moments::sumOfSquares).sum()) / degreesOfFreedom;
        List<Estimate> estimates = new ArrayList<>();
        double[] loadings = new double[others.size()];
        for (int i = 0; i < loadings.length; i++) {
            Moments group = others.get(i);
            double standardError = Math.sqrt(variance * (1.0 / first.count() + 1.0 / group.count()));
            estimates.add(Estimate.of(group.mean() - first.mean(), standardError, degreesOfFreedom));
            loadings[i] = Math.sqrt(group.count() / (double) (group.count() + first.count()));
        }
        return new ManyToOne(estimates, MultivariateT.oneFactor(loadings, degreesOfFreedom));
    }

    /**
     * Estimates of a common fit.
     *
     * @param estimates all with the same degrees of freedom, one or more
     * @param loadings as {@link Loadings} finds them, one for each estimate
     * @throws IllegalArgumentException if counts or degrees of freedom differ, or a loading is outside [0, 1)
     */
    public static ManyToOne ofEstimates(List<Estimate> estimates, double[] loadings) {
        if (estimates.size() != loadings.length) {
            throw new IllegalArgumentException(estimates.size() + " estimates with " + loadings.length + " loadings");
        }
        Argument.atLeast("number of comparisons", loadings.length, 1);
        double degreesOfFreedom = estimates.get(0).degreesOfFreedom();
        if (estimates.stream().anyMatch(estimate -> estimate.degreesOfFreedom() != degreesOfFreedom)) {
            throw new IllegalArgumentException("the estimates have different degrees of freedom");
        }
        return new ManyToOne(estimates, MultivariateT.oneFactor(loadings, degreesOfFreedom));
    }

    /** How many changes are compared. */
    public int comparisons() {
        return estimates.size();
    }

    /** The change with its test taken alone, from the common variance. */
    public Estimate estimate(int comparison) {
        return estimates.get(comparison);
    }

    /**
     * The p value of a change, adjusted for all of them.
     *
     * @param tail {@code TWO}: different from the baseline; {@code ONE}: above it
     * @return in [0, 1]; tested to 1e-8 relative
     */
    public double adjustedP(int comparison, Tail tail) {
        double t = estimates.get(comparison).t();
        return Math.min(1, distribution.anyBeyond(tail == Tail.TWO ? Math.abs(t) : t, tail));
    }

    /**
     * How many standard errors the simultaneous intervals reach.
     *
     * @param level probability that all of them hold, in (0, 1)
     * @param tail {@code TWO}: intervals with two ends; {@code ONE}: with a lower end only
     * @throws IllegalArgumentException if the level is outside (0, 1)
     */
    public double criticalValue(double level, Tail tail) {
        ConfidenceInterval.requireLevel(level);
        return distribution.bound(1 - level, tail);
    }

    /**
     * The two-sided interval of a change; all of them together hold with the level.
     *
     * @throws IllegalArgumentException if the level is outside (0, 1)
     */
    public ConfidenceInterval interval(int comparison, double level) {
        Estimate estimate = estimates.get(comparison);
        double reach = estimate.standardError() == 0 ? 0 : criticalValue(level, Tail.TWO) * estimate.standardError();
        return new ConfidenceInterval(level, estimate.logDifference() - reach, estimate.logDifference() + reach);
    }
}
