package coldproof.stats.randomisation;

/**
 * The outcome of a randomisation test.
 *
 * @param statistic the observed difference, against minus baseline
 * @param p share of assignments with an absolute difference at least as large, the observed one included; where drawn at random (b + 1) / (m + 1)
 * @param pGreater the same for a difference at least as large
 * @param pLess the same for a difference at most as large
 * @param assignments how many the plan could have drawn
 * @param smallestP the smallest two-sided p that any data could have given
 * @param exact whether every assignment was counted
 * @param resamples how many were drawn at random; 0 where {@code exact}
 */
public record RandomisationResult(double statistic, double p, double pGreater, double pLess, double assignments, double smallestP,
        boolean exact, int resamples) {
    /** Checks that the probabilities are ones. */
    public RandomisationResult {
        if (!(p > 0 && p <= 1 && pGreater > 0 && pGreater <= 1 && pLess > 0 && pLess <= 1)) {
            throw new IllegalArgumentException("p " + p + ", " + pGreater + ", " + pLess + " are not all in (0, 1]");
        }
    }
}
