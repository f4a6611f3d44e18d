package coldproof.stats.model;

import java.util.Arrays;
import java.util.List;

/**
 * Estimates of one fit, judged by one variance.
 *
 * @param estimates all with the same degrees of freedom
 * @param correlations between their errors, ones on the diagonal
 */
public record JointEstimates(List<Estimate> estimates, double[][] correlations) {
    /** Copies. */
    public JointEstimates {
        estimates = List.copyOf(estimates);
        correlations = Arrays.stream(correlations).map(double[]::clone).toArray(double[][]::new);
    }

    /** A copy of the correlations. */
    @Override
    public double[][] correlations() {
        return Arrays.stream(correlations).map(double[]::clone).toArray(double[][]::new);
    }
}
