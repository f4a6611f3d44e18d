package coldproof.reason.sizing;

/**
 * Probability that a study decides what it was made to decide, as a function of how precisely it sees the change. It must not fall when the
 * standard error falls, or when the degrees of freedom or the loading grow: the search rests on that.
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

    /**
     * The power where several changes are judged together.
     *
     * @param loading {@link #loading} of the study
     */
    default double of(double standardErrorLog, int degreesOfFreedom, double loading) {
        return of(standardErrorLog, degreesOfFreedom);
    }

    /** What ties the changes together, in [0, 1): the larger, the less judging them together costs; 0 where it does not matter. */
    default double loading(int baselineSessions, int againstSessions) {
        return 0;
    }

    /** A bound the power cannot exceed, quicker than the power itself; infinite where none is. */
    default double atMost(double standardErrorLog, int degreesOfFreedom, double loading) {
        return Double.POSITIVE_INFINITY;
    }

    /** A power nowhere below this one that knows no loadings and is quick; this one where it is so itself. */
    default DecisionPower generous() {
        return this;
    }

    /** A power nowhere above this one that knows no loadings and is quick; this one where it is so itself. */
    default DecisionPower strict() {
        return this;
    }
}
