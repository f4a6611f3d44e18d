package coldproof.reason.rehearse.bench;

/** Telemetry of one simulated trial: a row per sample, NaN where a reading was lost. Immutable; arrays are copied out. */
public final class BenchTrace {
    /** What is logged. Power and clock are means over the sample's interval, everything else is of the moment. */
    public enum Channel {
        /** Time since the log began, s; rises, never NaN. */
        SECONDS,
        /** First die sensor, °C, the one that sits where it is hottest. */
        DIE_CELSIUS,
        /** Second die sensor, °C. */
        COOLER_DIE_CELSIUS,
        /** Package power, W. */
        PACKAGE_WATTS,
        /** Clock, MHz. */
        MEGAHERTZ,
        /** Fan speed, 1/min. */
        FAN_RPM,
        /** Utilisation, %. */
        UTILISATION_PERCENT,
        /** Charge of the battery, %. */
        BATTERY_PERCENT,
        /** Temperature of the battery's cells, °C. */
        CELL_CELSIUS,
        /** Air at the inlet, °C. */
        AIR_CELSIUS
    }

    private final double[][] columns;

    /** Takes the columns over; the caller keeps no reference. */
    BenchTrace(double[][] columns) {
        this.columns = columns;
    }

    /** How many samples there are. */
    public int size() {
        return columns[0].length;
    }

    /** One channel, a value per sample. */
    public double[] values(Channel channel) {
        return columns[channel.ordinal()].clone();
    }
}
