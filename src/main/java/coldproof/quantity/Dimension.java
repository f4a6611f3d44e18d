package coldproof.quantity;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * A kind of quantity with the units a person may write. The first unit is the one used inside and in JSON.
 */
public enum Dimension {
    /** Change or noise, in percent. */
    PERCENT("%", "a percentage such as 3 %", units("%", 1, "percent", 1)),
    /** Air, surface or die temperature, in °C. */
    TEMPERATURE("°C", "a temperature such as -9 °C, 15 °F or 264 K", units("°C", 1)),
    /** Difference of temperatures, in K. */
    TEMPERATURE_DIFFERENCE("K", "a temperature difference such as 3 K", units("K", 1, "°C", 1, "C", 1, "°F", 1 / 1.8, "F", 1 / 1.8)),
    /** Duration, in s. */
    TIME("s", "a time such as 4 min, 90 s or 3 h",
            units("s", 1, "sec", 1, "second", 1, "seconds", 1, "ms", 1e-3, "min", 60, "minute", 60, "minutes", 60,
                    "h", 3600, "hour", 3600, "hours", 3600, "d", 86400, "day", 86400, "days", 86400)),
    /** Speed of wind, in m/s. */
    SPEED("m/s", "a wind speed such as 3 m/s, 10 km/h or 6 mph", units("m/s", 1, "km/h", 1 / 3.6, "kmh", 1 / 3.6, "mph", 0.44704, "kn", 1852 / 3600.0)),
    /** Power, in W. */
    POWER("W", "a power such as 38 W", units("W", 1, "mW", 1e-3, "kW", 1e3)),
    /** Energy, in Wh. */
    ENERGY("Wh", "an energy such as 60 Wh", units("Wh", 1, "mWh", 1e-3, "kWh", 1e3, "J", 1 / 3600.0, "kJ", 1000 / 3600.0)),
    /** Clock rate, in MHz. */
    CLOCK("MHz", "a clock rate such as 4100 MHz or 4.1 GHz", units("MHz", 1, "GHz", 1e3, "kHz", 1e-3, "Hz", 1e-6)),
    /** Thermal resistance, in K/W. */
    THERMAL_RESISTANCE("K/W", "a thermal resistance such as 1.7 K/W", units("K/W", 1, "°C/W", 1, "C/W", 1)),
    /** Height above the sea, in m. */
    LENGTH("m", "a height such as 450 m", units("m", 1, "km", 1e3, "ft", 0.3048));

    private final String unit;
    private final String expected;
    private final Map<String, Double> factors;

    Dimension(String unit, String expected, Map<String, Double> factors) {
        this.unit = unit;
        this.expected = expected;
        this.factors = factors;
    }

    /** The unit used inside. */
    public String unit() {
        return unit;
    }

    /** What to write, with an example. */
    public String expected() {
        return expected;
    }

    /** Factor from each unit a person may write to the unit used inside; temperature scales are handled by {@link QuantityText}. */
    Map<String, Double> factors() {
        return factors;
    }

    private static Map<String, Double> units(Object... pairs) {
        Map<String, Double> units = new LinkedHashMap<>();
        for (int i = 0; i < pairs.length; i += 2) {
            units.put((String) pairs[i], ((Number) pairs[i + 1]).doubleValue());
        }
        return units;
    }
}
