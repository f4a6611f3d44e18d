package coldproof.reason.safety;

import coldproof.quantity.Dimension;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** What a rule may read: taken at the bench, or derived from what was taken. A closed set with units and believable ranges. */
public enum Reading {
    /** Temperature of the test air. */
    AIR("air", Dimension.TEMPERATURE, -89.2, 60),
    /** Relative humidity of the test air, with respect to water. */
    HUMIDITY("humidity", Dimension.PERCENT, 1, 100),
    /** Wind at 10 m height. */
    WIND("wind", Dimension.SPEED, 0, 90),
    /** What falls from the sky. */
    PRECIPITATION("precipitation", "none", "snow", "rain", "fog"),
    /** Whether the test air is the open air. */
    OUTDOORS("outdoors", "yes", "no"),
    /** Temperature of the room that the device comes back to. */
    ROOM("room", Dimension.TEMPERATURE, -30, 50),
    /** Relative humidity of that room. */
    ROOM_HUMIDITY("room humidity", Dimension.PERCENT, 1, 100),
    /** Coldest (or hottest) part of the device that was measured. */
    DEVICE("device temperature", Dimension.TEMPERATURE, -89.2, 150),
    /** Temperature of the battery's cells. */
    CELL("cell temperature", Dimension.TEMPERATURE, -89.2, 150),
    /** State of charge. */
    BATTERY("battery", Dimension.PERCENT, 0, 100),
    /** Where the power comes from. */
    POWER("power", "wall", "battery"),
    /** Whether the battery is being charged. */
    CHARGING("charging", "yes", "no"),
    /** Whether somebody made sure that wall power does not charge the battery, or it is full. */
    CHARGING_INHIBITED("charging inhibited", "yes", "no"),
    /** Whether the outlet is behind a residual-current device of 30 mA or less that was tested. */
    RESIDUAL_CURRENT("residual-current protection", "yes", "no", "unknown"),
    /** Whether an extension lead is used. */
    EXTENSION_LEAD("extension lead", "yes", "no"),
    /** Whether nobody else is there. */
    ALONE("alone", "yes", "no"),
    /** How the fan is set. */
    FAN("fan", "auto", "maximum", "stopped"),
    /** Whether the case is opened: paste, pads, cleaning. */
    OPENED("case opened", "yes", "no"),
    /** Height above the sea. */
    ALTITUDE("altitude", Dimension.LENGTH, -500, 9000),
    /** Planned time in the test air. */
    STAY("planned stay", Dimension.TIME, 0, 7 * 86_400),
    /** Time until sunset. */
    DAYLIGHT("daylight left", Dimension.TIME, -86_400, 366 * 86_400),
    /** Energy of the full battery as it is now. */
    BATTERY_ENERGY("battery energy", Dimension.ENERGY, 0.1, 100_000),
    /** Mean power drawn from the battery. */
    DRAW("draw", Dimension.POWER, 0.01, 100_000),
    /** Soak planned at the start of a session. */
    SOAK("soak", Dimension.TIME, 0, 7 * 86_400),

    /** Temperature at which the test air is saturated over water. */
    DEW_POINT("dew point", Dimension.TEMPERATURE),
    /** Temperature at which the test air is saturated over ice. */
    FROST_POINT("frost point", Dimension.TEMPERATURE),
    /** Dew point of the room. */
    ROOM_DEW_POINT("room dew point", Dimension.TEMPERATURE),
    /** Relative humidity of the test air brought to 21 °C. */
    WARMED_HUMIDITY("humidity of the air warmed to 21 °C", Dimension.PERCENT),
    /** Felt temperature; a wind that is not given counts as calm. */
    WIND_CHILL("wind chill", Dimension.TEMPERATURE),
    /** Time in which exposed skin may freeze. */
    FROSTBITE("time to frostbite", Dimension.TIME),
    /** Felt temperature in the heat. */
    HEAT_INDEX("heat index", Dimension.TEMPERATURE),
    /** How far the device lies above the room's dew point. */
    SURFACE_MARGIN("surface above the room's dew point", Dimension.TEMPERATURE_DIFFERENCE),
    /** How far a device as cold as the test air lies above the room's dew point. */
    ARRIVAL_MARGIN("test air above the room's dew point", Dimension.TEMPERATURE_DIFFERENCE),
    /** How far the device as it leaves lies above the dew point of the test air. */
    OUTGOING_MARGIN("device above the dew point of the test air", Dimension.TEMPERATURE_DIFFERENCE),
    /** Difference between test air and room, without sign. */
    STEP("step between test air and room", Dimension.TEMPERATURE_DIFFERENCE),
    /** Coldest that the cells may be: measured, else the device, else the test air. */
    COLDEST_CELL("coldest cell", Dimension.TEMPERATURE),
    /** Warmest that the cells may be: measured, else the device, else 15 K above the test air. */
    WARMEST_CELL("warmest cell", Dimension.TEMPERATURE),
    /** Coldest thing a hand may meet: the device where it was measured, else the test air, whichever is colder. */
    COLDEST_SURFACE("coldest surface", Dimension.TEMPERATURE),
    /** Longest stay outdoors less the planned one; below 0 the plan is too long. */
    STAY_MARGIN("stay allowed beyond the planned one", Dimension.TIME);

    private final String word;
    private final Optional<Dimension> dimension;
    private final List<String> words;
    private final double least;
    private final double most;
    private final boolean derived;

    Reading(String word, Dimension dimension, double least, double most) {
        this(word, Optional.of(dimension), List.of(), least, most, false);
    }

    Reading(String word, Dimension dimension) {
        this(word, Optional.of(dimension), List.of(), Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY, true);
    }

    Reading(String word, String... words) {
        this(word, Optional.empty(), List.of(words), Double.NaN, Double.NaN, false);
    }

    Reading(String word, Optional<Dimension> dimension, List<String> words, double least, double most, boolean derived) {
        this.word = word;
        this.dimension = dimension;
        this.words = words;
        this.least = least;
        this.most = most;
        this.derived = derived;
    }

    /** As written in rules and in the journal. */
    public String word() {
        return word;
    }

    /** Its dimension; empty for a reading that is a word. */
    public Optional<Dimension> dimension() {
        return dimension;
    }

    /** The words it may be; empty for a number. */
    public List<String> words() {
        return words;
    }

    /** Least number accepted, in the dimension's own unit. */
    public double least() {
        return least;
    }

    /** Largest number accepted, in the dimension's own unit. */
    public double most() {
        return most;
    }

    /** Whether it follows from others and cannot be given. */
    public boolean derived() {
        return derived;
    }

    /** The readings that are taken at the bench. */
    public static List<Reading> taken() {
        return Arrays.stream(values()).filter(reading -> !reading.derived).toList();
    }

    /** The reading of a word. */
    public static Optional<Reading> of(String word) {
        return Arrays.stream(values()).filter(reading -> reading.word.equals(word)).findFirst();
    }
}
