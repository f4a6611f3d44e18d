package coldproof.reason.rehearse.bench;

import coldproof.quantity.Dimension;

/** Something a person may know of a device, or a pilot may show, from which a simulated bench is made. */
public enum BenchFact {
    /** Die temperature the firmware holds. */
    TEMPERATURE_LIMIT("temperature limit", Dimension.TEMPERATURE, 40, 150),
    /** Package power that can be kept up. */
    POWER_LIMIT("power limit", Dimension.POWER, 0.5, 5000, true),
    /** Package power at the beginning. */
    BOOST_POWER("boost power", Dimension.POWER, 0.5, 5000, true),
    /** Time constant of the average the power limit looks at. */
    BOOST_AVERAGING("boost averaging", Dimension.TIME, 1, 3600),
    /** Highest clock the firmware allows. */
    CLOCK_LIMIT("clock limit", Dimension.CLOCK, 50, 20_000, true),
    /** Highest clock of the silicon. */
    HIGHEST_CLOCK("highest clock", Dimension.CLOCK, 100, 20_000),
    /** Clock at idle. */
    LOWEST_CLOCK("lowest clock", Dimension.CLOCK, 10, 10_000),
    /** Package power at the highest clock under the heaviest load, the die at 85 °C. */
    FULL_POWER("full power", Dimension.POWER, 1, 10_000),
    /** Steady resistance from die to air, the fan as fast as its curve takes it, in air of 21 °C. */
    THERMAL_RESISTANCE("thermal resistance", Dimension.THERMAL_RESISTANCE, 0.01, 50),
    /** Time constant with which die and sink come to rest. */
    TIME_CONSTANT("time constant", Dimension.TIME, 2, 7200),
    /** What the adapter gives to the whole device. */
    SUPPLY_LIMIT("supply limit", Dimension.POWER, 1, 20_000, true),
    /** What the warm battery gives to the whole device. */
    BATTERY_LIMIT("battery limit", Dimension.POWER, 1, 20_000, true),
    /** Energy of the full battery; 0 Wh for none. */
    BATTERY_ENERGY("battery energy", Dimension.ENERGY, 0, 5000),
    /** Power of the device outside the package. */
    REST_POWER("rest power", Dimension.POWER, 0, 5000),
    /** Length of the work in one trial. */
    WORK("work", Dimension.TIME, 20, 7200);

    private final String key;
    private final Dimension dimension;
    private final double least;
    private final double most;
    private final boolean mayBeNone;

    BenchFact(String key, Dimension dimension, double least, double most) {
        this(key, dimension, least, most, false);
    }

    BenchFact(String key, Dimension dimension, double least, double most, boolean mayBeNone) {
        this.key = key;
        this.dimension = dimension;
        this.least = least;
        this.most = most;
        this.mayBeNone = mayBeNone;
    }

    /** As written in a file. */
    public String key() {
        return key;
    }

    /** What it measures. */
    public Dimension dimension() {
        return dimension;
    }

    /** The least that makes sense, in the dimension's unit. */
    public double least() {
        return least;
    }

    /** The most that makes sense, in the dimension's unit. */
    public double most() {
        return most;
    }

    /** Whether there may be no such limit, which is infinity. */
    public boolean mayBeNone() {
        return mayBeNone;
    }
}
