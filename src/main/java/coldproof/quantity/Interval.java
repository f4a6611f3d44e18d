package coldproof.quantity;

/**
 * A two-sided interval with the share of repetitions in which it would hold the truth.
 *
 * @param level confidence level, in (0, 1)
 * @param low lower end; negative infinity where there is none
 * @param high upper end, not below {@code low}; positive infinity where there is none
 */
public record Interval(double level, double low, double high) {
    /** Refuses NaN, a level outside (0, 1) and ends in the wrong order. */
    public Interval {
        if (!(level > 0 && level < 1)) {
            throw new IllegalArgumentException("confidence level " + level + " is outside (0, 1)");
        }
        if (!(low <= high)) {
            throw new IllegalArgumentException("an interval from " + low + " to " + high + " has its ends in the wrong order");
        }
    }

    /** Whether the value lies inside or on an end. */
    public boolean contains(double value) {
        return low <= value && value <= high;
    }

    /** Whether the whole interval lies strictly inside ({@code from}, {@code to}). */
    public boolean liesInside(double from, double to) {
        return low > from && high < to;
    }

    /** The same interval of log differences as percent changes. */
    public Interval logToPercent() {
        return new Interval(level, LogRatio.toPercent(low), LogRatio.toPercent(high));
    }
}
