package coldproof.stats.propagation;

import coldproof.stats.Argument;

/**
 * A quantity known with an uncertainty. The same quantity used twice is the same object's name twice: its errors then go together.
 *
 * @param name what tells it from the others
 * @param estimate its value, finite
 * @param standardUncertainty standard deviation of the estimate, 0 or more
 * @param degreesOfFreedom of that uncertainty, above 0; infinity where it is taken as known
 */
public record Quantity(String name, double estimate, double standardUncertainty, double degreesOfFreedom) {
    /** Refuses an estimate that is not finite, and an uncertainty or degrees of freedom out of range. */
    public Quantity {
        Argument.finite("estimate", estimate);
        Argument.within("standard uncertainty", standardUncertainty, 0, Double.MAX_VALUE);
        Argument.degreesOfFreedom(degreesOfFreedom);
    }
}
