package coldproof.physics;

import coldproof.quantity.Celsius;
import java.util.Optional;

/**
 * Water vapour in air by the Magnus formula with the coefficients of WMO-No. 8 (CIMO guide): {@code e = 611.2 exp(a t / (b + t))} Pa,
 * a = 17.62 and b = 243.12 °C over water, a = 22.46 and b = 272.62 °C over ice (ice pair from memory).
 *
 * <p>Closed form both ways. Against the IAPWS formulations the dew and frost points differ by at most 0.10 K in the range accepted, which
 * is less than any hygrometer contributes. Water: -45 to 60 °C. Ice: -65 to 0.01 °C. Nothing is extrapolated. The enhancement factor
 * of moist air (below 0.5 %) cancels in the dew point and is left out.
 */
public final class Psychrometrics {
    /** Coldest temperature over (supercooled) water, °C. */
    public static final double WATER_LOWEST = -45;
    /** Warmest temperature over water, °C. */
    public static final double WATER_HIGHEST = 60;
    /** Coldest temperature over ice, °C. */
    public static final double ICE_LOWEST = -65;
    /** Warmest temperature over ice, °C: the triple point. */
    public static final double ICE_HIGHEST = 0.01;

    private static final double AT_ZERO = 611.2; // Pa
    private static final double WATER_A = 17.62;
    private static final double WATER_B = 243.12; // °C
    private static final double ICE_A = 22.46;
    private static final double ICE_B = 272.62; // °C

    private Psychrometrics() {}

    /**
     * Saturation vapour pressure over liquid water, in Pa; within 0.7 % of IAPWS.
     *
     * @throws IllegalArgumentException if the temperature is outside [-45, 60] °C
     */
    public static double saturationPressureOverWater(Celsius temperature) {
        double t = Bounds.within("temperature over water", temperature.degrees(), WATER_LOWEST, WATER_HIGHEST, "°C");
        return AT_ZERO * Math.exp(WATER_A * t / (WATER_B + t));
    }

    /**
     * Saturation vapour pressure over ice, in Pa; within 0.3 % of IAPWS.
     *
     * @throws IllegalArgumentException if the temperature is outside [-65, 0.01] °C
     */
    public static double saturationPressureOverIce(Celsius temperature) {
        double t = Bounds.within("temperature over ice", temperature.degrees(), ICE_LOWEST, ICE_HIGHEST, "°C");
        return AT_ZERO * Math.exp(ICE_A * t / (ICE_B + t));
    }

    /** Vapour pressure of air, in Pa: {@code RH / 100} of saturation over water. */
    public static double vapourPressure(Celsius air, RelativeHumidity humidity) {
        return humidity.percent() / 100 * saturationPressureOverWater(air);
    }

    /**
     * The temperature at which this air is saturated over water. Empty when it lies below -45 °C, where no formula here is trusted; the
     * frost point may still exist.
     *
     * @throws IllegalArgumentException if the air is outside [-45, 60] °C
     */
    public static Optional<Celsius> dewPoint(Celsius air, RelativeHumidity humidity) {
        return dewPointOfVapourPressure(vapourPressure(air, humidity));
    }

    /**
     * The temperature at which this air is saturated over ice. Empty when it lies above the triple point (water forms, not frost) or below
     * -65 °C. Never below the dew point.
     *
     * @throws IllegalArgumentException if the air is outside [-45, 60] °C
     */
    public static Optional<Celsius> frostPoint(Celsius air, RelativeHumidity humidity) {
        return frostPointOfVapourPressure(vapourPressure(air, humidity));
    }

    /** Dew point of a vapour pressure in Pa, above 0; empty outside [-45, 60] °C. */
    public static Optional<Celsius> dewPointOfVapourPressure(double pascal) {
        return inverse(pascal, WATER_A, WATER_B, WATER_LOWEST, WATER_HIGHEST);
    }

    /** Frost point of a vapour pressure in Pa, above 0; empty outside [-65, 0.01] °C. */
    public static Optional<Celsius> frostPointOfVapourPressure(double pascal) {
        return inverse(pascal, ICE_A, ICE_B, ICE_LOWEST, ICE_HIGHEST);
    }

    private static Optional<Celsius> inverse(double pascal, double a, double b, double lowest, double highest) {
        double x = Math.log(Bounds.positive("vapour pressure", pascal, "Pa") / AT_ZERO);
        double t = b * x / (a - x);
        double rounding = 1e-9; // saturated air at an end of the range belongs to it
        if (!(t >= lowest - rounding && t <= highest + rounding)) {
            return Optional.empty();
        }
        return Optional.of(new Celsius(Math.min(highest, Math.max(lowest, t))));
    }

    /**
     * Relative humidity in percent of the same air brought to another temperature at constant pressure; above 100 means that it would
     * condense.
     */
    public static double relativeHumidityAt(Celsius other, Celsius air, RelativeHumidity humidity) {
        return 100 * vapourPressure(air, humidity) / saturationPressureOverWater(other);
    }
}
