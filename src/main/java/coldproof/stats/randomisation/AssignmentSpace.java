package coldproof.stats.randomisation;

import java.util.random.RandomGenerator;

/**
 * All assignments a plan could have drawn, with the statistic each gives. The statistic is linear in the scores: when every score of the
 * other level is lowered by d, the assignment's statistic D becomes {@code D - d c}, with overlap c in [-1, 1]; the observed one has c = 1.
 */
interface AssignmentSpace {
    /** Assignments and smallest p. */
    RandomisationScheme scheme();

    /** The observed statistic. */
    double observed();

    /** The largest share a single value has in the statistic, for ties and brackets. */
    double largestShare();

    /** Whether every assignment can be counted within the effort. */
    boolean isCountable(double exactUpTo);

    /** Roughly the additions one exact count takes. */
    double countingWork();

    /** Counts every assignment with every score of the other level lowered by {@code shift}. */
    Tally count(double shift);

    /** A source of assignments drawn at random, all equally likely. */
    Draws draws();

    /** Assignments drawn at random. */
    interface Draws {
        /**
         * Draws as many as the arrays hold.
         *
         * @param statistic receives the statistics
         * @param overlap receives the overlaps; null if not wanted
         */
        void fill(RandomGenerator random, double[] statistic, double[] overlap);
    }
}
