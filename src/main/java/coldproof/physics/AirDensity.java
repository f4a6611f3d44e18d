package coldproof.physics;

import coldproof.quantity.Celsius;

/** Density of air by height and weather, and what it does to the cooling by a fan at fixed speed. */
public final class AirDensity {
    /** Pressure at sea level in the standard atmosphere, Pa (ISO 2533). */
    public static final double SEA_LEVEL_PRESSURE = 101_325;

    private static final double SEA_LEVEL_KELVIN = 288.15;
    private static final double LAPSE = 0.0065; // K/m
    private static final double EXPONENT = 5.25588; // g / (R lapse)
    private static final double DRY_GAS_CONSTANT = 287.05287; // J/(kg K), ISO 2533
    private static final double VAPOUR_GAS_CONSTANT = 461.5; // J/(kg K)

    /**
     * Change of the convective part of a thermal resistance, as factors on it.
     *
     * @param best the factor if the flow is turbulent: density ratio to the power -0.8
     * @param least the factor if the flow is laminar: density ratio to the power -0.5
     */
    public record ResistanceFactor(double best, double least) {}

    private AirDensity() {}

    /**
     * Pressure of the standard atmosphere (ISO 2533) in Pa: {@code 101325 (T / 288.15)^5.25588}, T = 288.15 - 0.0065 h.
     *
     * @param altitudeMetres height above the sea, in [-500, 9000] m
     */
    public static double standardPressure(double altitudeMetres) {
        return SEA_LEVEL_PRESSURE * Math.pow(standardKelvin(altitudeMetres) / SEA_LEVEL_KELVIN, EXPONENT);
    }

    /** Density of the standard atmosphere (ISO 2533) in kg/m³. */
    public static double standard(double altitudeMetres) {
        return standardPressure(altitudeMetres) / (DRY_GAS_CONSTANT * standardKelvin(altitudeMetres));
    }

    private static double standardKelvin(double altitudeMetres) {
        return SEA_LEVEL_KELVIN - LAPSE * Bounds.within("altitude", altitudeMetres, -500, 9000, "m");
    }

    /** Density of dry air in kg/m³. */
    public static double dry(Celsius air, double pressurePascal) {
        return Bounds.within("pressure", pressurePascal, 25_000, 110_000, "Pa") / (DRY_GAS_CONSTANT * air.kelvin());
    }

    /**
     * Density of moist air in kg/m³ as a mixture of ideal gases: {@code (p - e) / (Rd T) + e / (Rv T)}; within 0.1 % of CIPM-2007.
     *
     * @param pressurePascal station pressure (not reduced to the sea), in [25000, 110000] Pa
     */
    public static double moist(Celsius air, RelativeHumidity humidity, double pressurePascal) {
        double e = Psychrometrics.vapourPressure(air, humidity);
        return dry(air, pressurePascal) - e / air.kelvin() * (1 / DRY_GAS_CONSTANT - 1 / VAPOUR_GAS_CONSTANT);
    }

    /**
     * How the convective thermal resistance changes at fixed fan speed when the air's density changes: mass flow goes with density, the
     * resistance with its power -0.5 (laminar) to -0.8 (turbulent; exponents from memory). The whole path changes less, because
     * conduction stays: report as "at most", never apply silently.
     *
     * @param before density before, kg/m³, above 0
     * @param after density after, kg/m³, above 0
     */
    public static ResistanceFactor convectiveResistance(double before, double after) {
        double ratio = Bounds.positive("density", after, "kg/m³") / Bounds.positive("density", before, "kg/m³");
        return new ResistanceFactor(Math.pow(ratio, -0.8), Math.pow(ratio, -0.5));
    }
}
