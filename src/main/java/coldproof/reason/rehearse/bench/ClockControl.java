package coldproof.reason.rehearse.bench;

/**
 * The controllers of a device. Each asks for a clock, the lowest is granted, and who asked for it is remembered.
 *
 * <p>Power: package power may reach {@code long + 20 (long - average)}, at most the short-term limit, where the average is exponential.
 * From an average A0 the short-term limit then lasts {@code averagingSeconds ln((short - A0) / (short - long + (short - long) / 20))}
 * seconds, after which the average creeps up to the long-term limit and never passes it. Heat: a proportional-integral rule on the distance
 * of the die from its limit sets a power budget, as in the power allocator of the Linux thermal framework (kernel documentation); or a
 * trip point with a band.
 */
final class ClockControl {
    static final double AVERAGE_GAIN = 20; // W allowed per W the average lies below the long-term limit; gives a sharp but steady step down
    private static final double REACTION_SECONDS = 1; // how fast the heat controller moves the die
    private static final double INTEGRAL_SECONDS = 6;
    private static final double UNWIND_SECONDS = 2;
    private static final double TRIP_BAND_KELVINS = 4;
    private static final double FALL_STEPS_PER_SECOND = 40; // a trip acts at once, the way back is careful
    private static final double CLIMB_STEPS_PER_SECOND = 12;
    private final ControlLimits limits;
    private final ClockTable table;
    private final double proportionalWattsPerKelvin;
    private final double ceilingIndex;
    private double averageWatts;
    private double heatIntegralWatts;
    private double tripIndex;
    private boolean tripped;
    private HeldBy holder = HeldBy.CLOCK;
    private double heatBudgetWatts;

    ClockControl(ControlLimits limits, ClockTable table, HeatNetwork network) {
        this.limits = limits;
        this.table = table;
        proportionalWattsPerKelvin = network.dieJoulesPerKelvin() / REACTION_SECONDS;
        ceilingIndex = table.indexOf(limits.clockCeilingMegahertz());
    }

    /** Puts the controllers at rest after long idling. */
    void settle(double idleWatts) {
        averageWatts = idleWatts;
        heatIntegralWatts = idleWatts;
        tripIndex = table.topIndex();
        tripped = false;
    }

    /**
     * The clock for the next step, as an index.
     *
     * @param load activity times utilisation
     * @param supplyWatts what the supply leaves for the package, W
     */
    double index(double seconds, double dieCelsius, double load, double leakageWatts, double supplyWatts) {
        double lowest = ceilingIndex;
        holder = HeldBy.CLOCK;
        double allowed = Math.min(limits.shortTermWatts(), limits.longTermWatts() + AVERAGE_GAIN * (limits.longTermWatts() - averageWatts));
        double byPower = table.indexWithin(allowed, load, leakageWatts);
        if (byPower < lowest) {
            lowest = byPower;
            holder = HeldBy.POWER;
        }
        double bySupply = table.indexWithin(supplyWatts, load, leakageWatts);
        if (bySupply < lowest) {
            lowest = bySupply;
            holder = HeldBy.SUPPLY;
        }
        double byHeat = limits.heatControl() == ControlLimits.HeatControl.TRIP ? tripIndex(seconds, dieCelsius, lowest)
                : setpointIndex(dieCelsius, load, leakageWatts);
        if (byHeat < lowest) {
            lowest = byHeat;
            holder = HeldBy.HEAT;
        }
        return lowest;
    }

    /** Tells the controllers what power the step took. */
    void took(double seconds, double watts, double dieCelsius) {
        averageWatts += (watts - averageWatts) * -Math.expm1(-seconds / limits.averagingSeconds());
        double error = limits.temperatureCelsius() - dieCelsius;
        double unused = Math.max(0, heatBudgetWatts - watts);
        heatIntegralWatts += seconds * (proportionalWattsPerKelvin * error / INTEGRAL_SECONDS - unused / UNWIND_SECONDS);
        heatIntegralWatts = Math.max(0, heatIntegralWatts);
    }

    HeldBy holder() {
        return holder;
    }

    double averageWatts() {
        return averageWatts;
    }

    private double setpointIndex(double dieCelsius, double load, double leakageWatts) {
        heatBudgetWatts = Math.max(0, heatIntegralWatts + proportionalWattsPerKelvin * (limits.temperatureCelsius() - dieCelsius));
        return table.indexWithin(heatBudgetWatts, load, leakageWatts);
    }

    private double tripIndex(double seconds, double dieCelsius, double others) {
        if (dieCelsius >= limits.temperatureCelsius()) {
            tripped = true;
        } else if (dieCelsius < limits.temperatureCelsius() - TRIP_BAND_KELVINS) {
            tripped = false;
        }
        tripIndex = tripped ? Math.max(0, Math.min(tripIndex, others) - seconds * FALL_STEPS_PER_SECOND)
                : Math.min(table.topIndex(), tripIndex + seconds * CLIMB_STEPS_PER_SECOND);
        return tripIndex;
    }
}
