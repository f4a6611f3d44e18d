package coldproof.reason.sizing;

/**
 * Probability that a study decides what it was made to decide, as a function of how precisely it sees the change. It must not fall when the
 * standard error falls or when the degrees of freedom grow: the search rests on that.
 */
@FunctionalInterface
public interface DecisionPower {
    /**
     * The power.
     *
     * @param standardErrorLog standard error of the log change, above 0
     * @param degreesOfFreedom of that standard error, 1 or more
     * @return probability in [0, 1]
     */
    double of(double standardErrorLog, int degreesOfFreedom);
}
