package coldproof.stats.interval;

/**
 * A two-sided interval that, over many repetitions, would hold the truth in the stated share of them.
 *
 * @param level confidence level, in (0, 1)
 * @param low lower end, in the unit of the estimate; negative infinity where the data set no bound
 * @param high upper end, not below {@code low}; positive infinity where the data set no bound
 */
public record ConfidenceInterval(double level, double low, double high) {
    /**
     * Checks the ends.
     *
     * @throws IllegalArgumentException if the level is outside (0, 1), an end is NaN or the ends are in the wrong order
     */
    public ConfidenceInterval {
        requireLevel(level);
        if (!(low <= high)) {
            throw new IllegalArgumentException("an interval from " + low + " to " + high + " has its ends in the wrong order");
        }
    }

    /** Whether the value lies inside or on an end. */
    public boolean contains(double value) {
        return low <= value && value <= high;
    }

    /** Width of the interval; positive infinity where an end is missing. */
    public double width() {
        return high - low;
    }

    /** Whether both ends exist. */
    public boolean isBounded() {
        return !Double.isInfinite(low) && !Double.isInfinite(high);
    }

    /**
     * Refuses what is no confidence level.
     *
     * @return the level
     * @throws IllegalArgumentException if it is outside (0, 1) or NaN
     */
    public static double requireLevel(double level) {
        if (!(level > 0 && level < 1)) {
            throw new IllegalArgumentException("level " + level + " is outside (0, 1)");
        }
        return level;
    }
}
