package coldproof.stats.randomisation;

/**
 * Where a statistic counts as being at least as extreme as the observed one. Values that differ by rounding only are ties: the tolerance is
 * 1e-10 of the observed statistic or of the largest share a single value has in it, whichever is larger.
 */
final class Thresholds {
    private static final double TIE = 1e-10;
    /** A statistic of at least this counts as greater. */
    final double greaterFrom;
    /** A statistic of at most this counts as less. */
    final double lessTo;
    /** A statistic at or beyond these counts as extreme. */
    final double extremeFrom;
    final double extremeTo;

    Thresholds(double observed, double largestShare) {
        double tolerance = TIE * Math.max(Math.abs(observed), largestShare);
        greaterFrom = observed - tolerance;
        lessTo = observed + tolerance;
        extremeFrom = Math.abs(observed) - tolerance;
        extremeTo = -extremeFrom;
    }

    /** Whether every statistic is as extreme as the observed one. */
    boolean allExtreme() {
        return extremeFrom <= 0;
    }

    boolean isExtreme(double statistic) {
        return statistic >= extremeFrom || statistic <= extremeTo;
    }
}
