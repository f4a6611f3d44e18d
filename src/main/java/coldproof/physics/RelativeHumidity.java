package coldproof.physics;

/**
 * Relative humidity of air, by meteorological convention always with respect to liquid water, also below 0 °C (WMO-No. 8, from memory).
 *
 * @param percent in [1, 100] %; below 1 % no ordinary hygrometer can be believed, above 100 % the air is a fog
 */
public record RelativeHumidity(double percent) {
    /** Lowest humidity accepted, in %. */
    public static final double LOWEST = 1;
    /** Highest humidity accepted, in %. */
    public static final double HIGHEST = 100;

    /** Refuses 0 %, 130 % and NaN. */
    public RelativeHumidity {
        Bounds.within("relative humidity", percent, LOWEST, HIGHEST, "%");
    }
}
