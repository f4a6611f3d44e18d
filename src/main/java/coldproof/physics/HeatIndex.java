package coldproof.physics;

import coldproof.quantity.Celsius;

/**
 * Heat index of the United States weather service: L. P. Rothfusz, technical attachment SR 90-23 (1990), with the service's simple formula
 * below 80 °F and its two adjustments.
 */
public final class HeatIndex {
    private HeatIndex() {}

    /**
     * The felt temperature in the shade.
     *
     * <p>The regression was made for 80 to about 112 °F and 40 %RH or more; below 80 °F the simple formula is averaged with the air
     * temperature.
     *
     * @param air air temperature, in [-45, 60] °C
     * @param humidity relative humidity
     * @throws IllegalArgumentException if the air is outside its range
     */
    public static Celsius of(Celsius air, RelativeHumidity humidity) {
        Bounds.within("air temperature", air.degrees(), Psychrometrics.WATER_LOWEST, Psychrometrics.WATER_HIGHEST, "°C");
        return Celsius.ofFahrenheit(inFahrenheit(32 + 1.8 * air.degrees(), humidity.percent()));
    }

    /** The published form: °F and percent in, °F out. */
    static double inFahrenheit(double t, double r) {
        double simple = 0.5 * (t + 61 + 1.2 * (t - 68) + 0.094 * r);
        double averaged = (simple + t) / 2;
        if (averaged < 80) {
            return averaged;
        }
        double index = -42.379 + 2.04901523 * t + 10.14333127 * r - 0.22475541 * t * r - 0.00683783 * t * t - 0.05481717 * r * r
                + 0.00122874 * t * t * r + 0.00085282 * t * r * r - 0.00000199 * t * t * r * r;
        if (r < 13 && t >= 80 && t <= 112) {
            index -= (13 - r) / 4 * Math.sqrt((17 - Math.abs(t - 95)) / 17);
        } else if (r > 85 && t >= 80 && t <= 87) {
            index += (r - 85) / 10 * ((87 - t) / 5);
        }
        return index;
    }
}
