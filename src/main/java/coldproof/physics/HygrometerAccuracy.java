package coldproof.physics;

/**
 * Tolerance of the instrument that measured the air, as its maker states it: plus or minus a limit, taken as rectangular.
 *
 * @param kelvins half-width of the temperature tolerance in K, in [0, 10]
 * @param percentagePoints half-width of the humidity tolerance in percentage points, in [0, 30]
 */
public record HygrometerAccuracy(double kelvins, double percentagePoints) {
    /** A digital humidity chip: ±0.5 K, ±3 %RH (typical of four data sheets). */
    public static final HygrometerAccuracy DIGITAL_CHIP = new HygrometerAccuracy(0.5, 3);
    /** A household thermo-hygrometer: ±1 K, ±5 %RH (common practice). */
    public static final HygrometerAccuracy HOUSEHOLD = new HygrometerAccuracy(1, 5);

    /** Refuses negative and NaN tolerances. */
    public HygrometerAccuracy {
        Bounds.within("temperature tolerance", kelvins, 0, 10, "K");
        Bounds.within("humidity tolerance", percentagePoints, 0, 30, "percentage points");
    }
}
