package coldproof.stats.randomisation;

/**
 * How much work a randomisation test may do.
 *
 * @param exactUpTo number of assignments up to which every one is counted, 1 or more; counting meets in the middle, so its work grows as the
 *     square root of this number
 * @param resamples assignments drawn at random beyond that, 1 or more
 */
public record Effort(double exactUpTo, int resamples) {
    /** Exact up to 10^12 assignments (a tenth of a second or so), else a million draws. */
    public static final Effort STANDARD = new Effort(1e12, 1_000_000);

    /** Checks the ranges. */
    public Effort {
        if (!(exactUpTo >= 1)) {
            throw new IllegalArgumentException("exactUpTo " + exactUpTo + " is not 1 or more");
        }
        if (resamples < 1) {
            throw new IllegalArgumentException("resamples " + resamples + " is not 1 or more");
        }
    }
}
