package coldproof.stats.multiple;

import java.util.Arrays;
import java.util.Optional;

/** Finds the common factor behind the correlations of several comparisons, where there is one. */
public final class Loadings {
    private static final double SAME = 1e-9; // correlations of a balanced plan differ by rounding only
    private static final double LARGEST = 1 - 1e-9; // beyond, two comparisons are the same

    private Loadings() {}

    /**
     * Loadings with {@code correlation_ij = loading_i loading_j}. Two comparisons always have them (only the size of their correlation counts for
     * a two-sided test); three or more have them when they share nothing but a baseline, as in balanced plans and independent groups.
     *
     * @param correlations symmetric, ones on the diagonal
     * @return one for each comparison, each in [0, 1); empty where the correlations have no such form
     */
    public static Optional<double[]> of(double[][] correlations) {
        int comparisons = correlations.length;
        double[] loadings = new double[comparisons];
        if (comparisons == 2) {
            Arrays.fill(loadings, Math.sqrt(Math.abs(correlations[0][1])));
        } else if (comparisons > 2) {
            for (int i = 0; i < comparisons; i++) {
                int j = (i + 1) % comparisons;
                int k = (i + 2) % comparisons;
                loadings[i] = Math.sqrt(correlations[i][j] * correlations[i][k] / correlations[j][k]);
            }
        }
        for (int i = 0; i < comparisons; i++) {
            if (!(loadings[i] >= 0 && loadings[i] < LARGEST)) {
                return Optional.empty();
            }
            for (int j = 0; j < i && comparisons > 2; j++) {
                if (Math.abs(loadings[i] * loadings[j] - correlations[i][j]) > SAME) {
                    return Optional.empty();
                }
            }
        }
        return Optional.of(loadings);
    }
}
