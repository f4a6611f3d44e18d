package coldproof.stats.randomisation;

import coldproof.stats.interval.ConfidenceInterval;

/** Ends of the inverted test by bisection of exact counts. */
final class CountedInterval {
    private static final int MOST_DOUBLINGS = 200;
    private static final int MOST_HALVINGS = 200;
    private static final double ROUNDING = 1e-14; // of the reach: the counts' own tie tolerance is 1e-10
    private final AssignmentSpace space;
    private final double rejectUpTo;
    private final double alpha;

    CountedInterval(AssignmentSpace space, double alpha) {
        this.space = space;
        this.alpha = alpha;
        rejectUpTo = alpha * (1 + 1e-12); // a p equal to alpha but for rounding rejects
    }

    ConfidenceInterval find() {
        return new ConfidenceInterval(1 - alpha, end(-1), end(1));
    }

    private boolean isRejected(double shift) {
        Tally tally = space.count(shift);
        return tally.extreme() / tally.total() <= rejectUpTo;
    }

    private double end(int direction) {
        double centre = space.observed();
        double reach = space.largestShare() > 0 ? space.largestShare() : 1;
        double inside = 0;
        int doublings = 0;
        while (!isRejected(centre + direction * reach)) {
            inside = reach;
            reach *= 2;
            if (++doublings > MOST_DOUBLINGS || space.scheme().smallestP() > rejectUpTo) {
                return direction * Double.POSITIVE_INFINITY;
            }
        }
        double outside = reach;
        for (int i = 0; i < MOST_HALVINGS && outside - inside > ROUNDING * outside; i++) {
            double middle = (inside + outside) / 2;
            if (isRejected(centre + direction * middle)) {
                outside = middle;
            } else {
                inside = middle;
            }
        }
        return centre + direction * inside;
    }
}
