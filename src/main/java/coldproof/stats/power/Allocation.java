package coldproof.stats.power;

import coldproof.stats.Argument;

/**
 * How many independent units each level of the compared factor gets: trials, pairs or sessions, as the layout says.
 *
 * @param baseline units under the baseline level, 1 or more
 * @param against units under the other level, 1 or more; for pairs the same number, because a pair has one trial of each
 */
public record Allocation(int baseline, int against) {
    /** Refuses counts below 1. */
    public Allocation {
        Argument.atLeast("units under the baseline", baseline, 1);
        Argument.atLeast("units under the other level", against, 1);
    }

    /** The same number under both levels. */
    public static Allocation equal(int perLevel) {
        return new Allocation(perLevel, perLevel);
    }

    /**
     * {@code ratio} times as many units under the other level as under the baseline, to the nearest whole number, at least {@code least}.
     *
     * @param ratio above 0, finite
     */
    static Allocation ofRatio(int baseline, double ratio, int least) {
        double against = Math.max(least, Math.rint(baseline * ratio));
        return new Allocation(baseline, (int) Math.min(Integer.MAX_VALUE, against));
    }

    /** Units under both levels together. */
    public long total() {
        return (long) baseline + against;
    }
}
