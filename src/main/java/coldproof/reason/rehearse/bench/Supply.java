package coldproof.reason.rehearse.bench;

/**
 * What feeds the device. System power is package power, the rest of the machine and the fan; the supply gives no more than its limit. A
 * cold cell gives less: {@code batteryColdPerKelvin} of the limit is lost for each kelvin of the cell below 20 °C; an empty one gives
 * nothing, and the lowest clock is all that is left.
 *
 * @param wallWatts limit of the adapter, W; infinite for none
 * @param batteryWatts limit of the warm battery, W; infinite for none
 * @param batteryColdPerKelvin share of the battery's limit lost per kelvin below 20 °C, in [0, 0.02]
 * @param batteryWattHours energy of the full battery, Wh; 0 for a device without one
 * @param cellSeconds time constant with which the cell follows the air, s, above 0
 * @param restWatts power of everything but package and fan, W, 0 or more
 */
public record Supply(double wallWatts, double batteryWatts, double batteryColdPerKelvin, double batteryWattHours, double cellSeconds,
        double restWatts) {
    private static final double WARM_CELSIUS = 20;
    private static final double LEAST_SHARE = 0.1; // a cell that gives less than a tenth would have switched off

    /** Where the power comes from. */
    public enum Source {
        /** The adapter. */
        WALL,
        /** The battery alone. */
        BATTERY
    }

    /** Refuses what is out of range. */
    public Supply {
        Ranges.within("wallWatts", wallWatts, Double.MIN_NORMAL, Double.POSITIVE_INFINITY);
        Ranges.within("batteryWatts", batteryWatts, Double.MIN_NORMAL, Double.POSITIVE_INFINITY);
        Ranges.within("batteryColdPerKelvin", batteryColdPerKelvin, 0, 0.02);
        Ranges.atLeast("batteryWattHours", batteryWattHours, 0);
        Ranges.above("cellSeconds", cellSeconds, 0);
        Ranges.atLeast("restWatts", restWatts, 0);
    }

    /** Whether there is a battery. */
    public boolean hasBattery() {
        return batteryWattHours > 0;
    }

    /** Limit of the system power, W. */
    double limitWatts(Source source, double cellCelsius) {
        if (source == Source.WALL) {
            return wallWatts;
        }
        double lost = batteryColdPerKelvin * Math.max(0, WARM_CELSIUS - cellCelsius);
        return batteryWatts * Math.max(LEAST_SHARE, 1 - lost);
    }
}
