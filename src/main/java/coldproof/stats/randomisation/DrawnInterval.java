package coldproof.stats.randomisation;

import coldproof.stats.interval.ConfidenceInterval;
import java.util.Arrays;
import java.util.random.RandomGenerator;

/** Ends of the inverted test from assignments drawn at random. */
final class DrawnInterval {
    private DrawnInterval() {}

    /**
     * For observed difference O an assignment with statistic D and overlap c is as extreme as the observed one while
     * {@code |D - d c| >= |O - d|}: between {@code (O - D) / (1 - c)} and {@code (O + D) / (1 + c)}, which lie on either side of O.
     */
    static ConfidenceInterval find(AssignmentSpace space, double level, int draws, RandomGenerator random) {
        double[] statistic = new double[draws];
        double[] overlap = new double[draws];
        space.draws().fill(random, statistic, overlap);
        double observed = space.observed();
        double[] low = new double[draws];
        double[] high = new double[draws];
        for (int i = 0; i < draws; i++) {
            double first = (observed - statistic[i]) / (1 - overlap[i]);
            double second = (observed + statistic[i]) / (1 + overlap[i]);
            boolean same = 1 - Math.abs(overlap[i]) < 1e-12; // the observed assignment or its mirror image: extreme for every d
            low[i] = same ? Double.NEGATIVE_INFINITY : Math.min(first, second);
            high[i] = same ? Double.POSITIVE_INFINITY : Math.max(first, second);
        }
        int rank = (int) Math.floor((1 - level) * (draws + 1) * (1 + 1e-12)); // p = (b + 1) / (draws + 1) above 1 - level needs b of this
        if (rank == 0) {
            return new ConfidenceInterval(level, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
        }
        Arrays.sort(low);
        Arrays.sort(high);
        return new ConfidenceInterval(level, Math.min(observed, low[rank - 1]), Math.max(observed, high[draws - rank]));
    }
}
