package coldproof.reason.verdict;

/**
 * The randomisation test: how often a change this large would come from the run order alone.
 *
 * @param p two-sided p-value, in (0, 1]
 * @param assignments how many orders there were to draw from
 * @param smallestP the smallest p this plan can give
 * @param exact whether all orders were gone through, rather than a sample
 */
public record Randomisation(double p, double assignments, double smallestP, boolean exact) {}
