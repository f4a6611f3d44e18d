package coldproof.physics;

/**
 * How long a cold device must wait in a room before its coldest part is safely above the dew point.
 *
 * @param lowMinutes earliest time at which a check is worth while, 0 or more
 * @param likelyMinutes best estimate
 * @param highMinutes the wait to plan with
 */
public record RewarmTime(double lowMinutes, double likelyMinutes, double highMinutes) {
    /** Shortest wait advised for a bagged device of unknown time constant, min (service and school pages: "at least one hour"). */
    public static final double SHORTEST_UNMEASURED_MINUTES = 60;

    /** No wait: the device is warm enough now. */
    public static final RewarmTime NONE = new RewarmTime(0, 0, 0);

    /** Refuses ends in the wrong order and NaN. */
    public RewarmTime {
        Bounds.within("low wait", lowMinutes, 0, Double.MAX_VALUE, "min");
        Bounds.within("likely wait", likelyMinutes, lowMinutes, Double.MAX_VALUE, "min");
        Bounds.within("high wait", highMinutes, likelyMinutes, Double.MAX_VALUE, "min");
    }
}
