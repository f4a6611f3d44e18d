package coldproof.physics;

import coldproof.quantity.Celsius;

/**
 * Wind chill of 2001 as used by the weather services of the United States and Canada.
 *
 * <p>{@code W = 13.12 + 0.6215 T - 11.37 V^0.16 + 0.3965 T V^0.16}, T in °C, V in km/h at 10 m height, for T up to 10 °C. Below 5 km/h the
 * Canadian branch {@code W = T + (-1.59 + 0.1345 T) / 5 V} is used (from memory; it meets the main formula at 5 km/h, and is the colder
 * choice against the other service's "no wind chill below 4.8 km/h"). Above 10 °C W is the air temperature; it is never above it.
 */
public final class WindChill {
    /** Warmest air for which wind chill is defined, °C. */
    public static final double WARMEST_AIR = 10;
    /** Strongest wind accepted, m/s: about the strongest ten-minute wind on record. */
    public static final double STRONGEST_WIND = 90;
    /** A hand-held anemometer at face height shows about two thirds of the wind at 10 m (from memory). */
    public static final double FACE_HEIGHT_TO_TEN_METRES = 1.5;

    private static final double MAIN_FORMULA_FROM = 5; // km/h

    private WindChill() {}

    /**
     * The felt temperature.
     *
     * @param air air temperature, in [-90, 60] °C
     * @param windMetresPerSecond wind at 10 m height, in [0, 90] m/s
     * @throws IllegalArgumentException if an argument is out of its range or NaN
     */
    public static Celsius of(Celsius air, double windMetresPerSecond) {
        double t = Bounds.within("air temperature", air.degrees(), -90, 60, "°C");
        double v = 3.6 * Bounds.within("wind", windMetresPerSecond, 0, STRONGEST_WIND, "m/s");
        if (t > WARMEST_AIR) {
            return air;
        }
        if (v < MAIN_FORMULA_FROM) {
            return new Celsius(Math.min(t, t + (-1.59 + 0.1345 * t) / 5 * v));
        }
        double power = Math.pow(v, 0.16);
        return new Celsius(Math.min(t, 13.12 + 0.6215 * t - 11.37 * power + 0.3965 * t * power));
    }

    /**
     * The same in the units of the United States: {@code W = 35.74 + 0.6215 T - 35.75 V^0.16 + 0.4275 T V^0.16}, T in °F up to 50,
     * V in miles per hour from 3. Its coefficients were rounded apart from the metric ones, so the two differ by up to 0.1 °F.
     *
     * @param airFahrenheit air temperature, in [-130, 50] °F
     * @param windMilesPerHour wind at 10 m height, in [3, 200] mph
     * @throws IllegalArgumentException if an argument is out of its range or NaN
     */
    public static double inFahrenheit(double airFahrenheit, double windMilesPerHour) {
        Bounds.within("air temperature", airFahrenheit, -130, 50, "°F");
        double power = Math.pow(Bounds.within("wind", windMilesPerHour, 3, 200, "mph"), 0.16);
        return 35.74 + 0.6215 * airFahrenheit - 35.75 * power + 0.4275 * airFahrenheit * power;
    }
}
