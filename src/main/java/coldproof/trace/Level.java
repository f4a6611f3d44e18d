package coldproof.trace;

/**
 * The level of a channel in a stretch of the work.
 *
 * @param mean in the unit used inside
 * @param standardError of the mean, with neighbouring rows that resemble each other counted as fewer; NaN for fewer than three rows
 * @param scatter standard deviation of the rows around their trend
 * @param wander standard deviation of means of about five seconds around the trend, less what quick noise explains: what is left when the
 *     noise of the sensor is taken away
 * @param trendPerMinute slope of the straight line through the rows
 * @param autocorrelation of neighbouring rows around the trend, in [-1, 1]
 * @param effectiveRows {@code n (1 - r) / (1 + r)}: how many independent rows would tell as much
 */
public record Level(double mean, double standardError, double scatter, double wander, double trendPerMinute, double autocorrelation,
        double effectiveRows) {

    /** Scatter of the slow part, relative to the mean. */
    public double relativeWander() {
        return wander / Math.abs(mean);
    }
}
