package coldproof.reason.rehearse.bench;

/**
 * How the air strays from the temperature planned for it: a fixed offset and a slope drawn for each session, and a part that wanders.
 *
 * @param offsetSdKelvins standard deviation of a session's offset, K, 0 or more
 * @param slopeSdKelvinsPerHour standard deviation of a session's slope, K/h, 0 or more
 * @param wanderSdKelvins standard deviation of the wandering part, K, 0 or more
 * @param wanderSeconds time over which the wandering part forgets itself, s, above 0
 * @param indoorShare how much of all this is left indoors, in [0, 1]
 */
public record Weather(double offsetSdKelvins, double slopeSdKelvinsPerHour, double wanderSdKelvins, double wanderSeconds,
        double indoorShare) {
    /** Air that stays exactly as planned. */
    public static final Weather STILL = new Weather(0, 0, 0, 1, 0);

    /** Refuses what is out of range. */
    public Weather {
        Ranges.atLeast("offsetSdKelvins", offsetSdKelvins, 0);
        Ranges.atLeast("slopeSdKelvinsPerHour", slopeSdKelvinsPerHour, 0);
        Ranges.atLeast("wanderSdKelvins", wanderSdKelvins, 0);
        Ranges.above("wanderSeconds", wanderSeconds, 0);
        Ranges.within("indoorShare", indoorShare, 0, 1);
    }
}
