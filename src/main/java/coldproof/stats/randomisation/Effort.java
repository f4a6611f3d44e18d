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

    private static final double UNITS_DRAWN = 4e7; // a second of one core where each is swapped into its place, a tenth of it where bits are drawn
    private static final int FEWEST = 20_000; // leaves p = 0.05 a Monte Carlo standard error of 0.0015

    /**
     * The standard for a study of so many trials: fewer draws where each of them moves many trials, so that the answer still comes at once.
     *
     * @param trials 1 or more
     */
    public static Effort forTrials(int trials) {
        return new Effort(STANDARD.exactUpTo, (int) Math.max(FEWEST, Math.min(STANDARD.resamples, UNITS_DRAWN / trials)));
    }

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
