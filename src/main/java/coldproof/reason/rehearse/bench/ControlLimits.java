package coldproof.reason.rehearse.bench;

/**
 * What the firmware will not exceed. The lowest clock any controller asks for is the one that runs.
 *
 * @param temperatureCelsius die temperature the heat controller holds, °C, in [40, 150]
 * @param heatControl how it holds it
 * @param longTermWatts limit of the exponential average of package power, W, above 0; infinite for none
 * @param shortTermWatts limit of package power at any moment, W, not below the long-term limit; infinite for none
 * @param averagingSeconds time constant of that average, s, at least 1
 * @param clockCeilingMegahertz highest clock allowed, MHz, above 0; infinite for what the silicon can do
 */
public record ControlLimits(double temperatureCelsius, HeatControl heatControl, double longTermWatts, double shortTermWatts,
        double averagingSeconds, double clockCeilingMegahertz) {
    /** How a die temperature is held at its limit. */
    public enum HeatControl {
        /** A setpoint: power is trimmed until the die sits at the limit. */
        SETPOINT,
        /** A trip point with a band: the clock falls above the limit and climbs again once the die has cooled, a sawtooth. */
        TRIP
    }

    /** Refuses what is out of range. */
    public ControlLimits {
        Ranges.within("temperatureCelsius", temperatureCelsius, 40, 150);
        Ranges.within("longTermWatts", longTermWatts, Double.MIN_NORMAL, Double.POSITIVE_INFINITY);
        Ranges.within("shortTermWatts", shortTermWatts, longTermWatts, Double.POSITIVE_INFINITY);
        Ranges.atLeast("averagingSeconds", averagingSeconds, 1);
        Ranges.within("clockCeilingMegahertz", clockCeilingMegahertz, Double.MIN_NORMAL, Double.POSITIVE_INFINITY);
    }
}
