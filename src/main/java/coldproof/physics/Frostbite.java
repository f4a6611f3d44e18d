package coldproof.physics;

import coldproof.quantity.Celsius;
import java.util.OptionalDouble;

/**
 * How soon exposed skin may freeze: the hazard bands of Environment Canada by wind chill, and the shorter of band and formula where a
 * formula exists. No frostbite in air above 0 °C, whatever the wind chill (United States weather service).
 */
public final class Frostbite {
    /** Hazard bands of Environment Canada by wind chill. */
    public enum Band {
        /** Wind chill above -10 °C. */
        LOW(-10, Double.NaN, Double.NaN),
        /** Wind chill -10 to -27 °C: uncomfortable, hypothermia if out for long without protection. */
        MODERATE(-28, Double.NaN, Double.NaN),
        /** Wind chill -28 to -39 °C: exposed skin may freeze in 10 to 30 min. */
        RISK(-40, 10, 30),
        /** Wind chill -40 to -47 °C: in 5 to 10 min. */
        HIGH(-48, 5, 10),
        /** Wind chill -48 to -54 °C: in 2 to 5 min. */
        VERY_HIGH(-55, 2, 5),
        /** Wind chill -55 °C or colder: in less than 2 min. */
        EXTREME(Double.NEGATIVE_INFINITY, 0, 2);

        private final double nextBandFrom;
        private final double shortestMinutes;
        private final double longestMinutes;

        Band(double nextBandFrom, double shortestMinutes, double longestMinutes) {
            this.nextBandFrom = nextBandFrom;
            this.shortestMinutes = shortestMinutes;
            this.longestMinutes = longestMinutes;
        }

        /** Short end of the published time to frostbite in min; empty where none is expected. */
        public OptionalDouble shortestMinutes() {
            return Double.isNaN(shortestMinutes) ? OptionalDouble.empty() : OptionalDouble.of(shortestMinutes);
        }

        /** Long end of the published time to frostbite in min; empty where none is expected. */
        public OptionalDouble longestMinutes() {
            return Double.isNaN(longestMinutes) ? OptionalDouble.empty() : OptionalDouble.of(longestMinutes);
        }
    }

    /** Wind chills at which the published bands (whole degrees) meet, °C, and the minutes that both neighbours allow there. */
    private static final double[] KNOT_WIND_CHILL = {-27.5, -39.5, -47.5, -54.5};
    private static final double[] KNOT_MINUTES = {30, 10, 5, 2};

    private Frostbite() {}

    /** The band of a wind chill; bands begin at the whole degree printed, rounded as the weather report rounds it. */
    public static Band band(Celsius windChill) {
        long rounded = Math.round(windChill.degrees());
        for (Band band : Band.values()) {
            if (rounded > band.nextBandFrom) {
                return band;
            }
        }
        return Band.EXTREME;
    }

    /**
     * Minutes until exposed skin may freeze, the shorter of two estimates; empty where none is expected (air above 0 °C, or wind chill
     * above -28 °C and no formula).
     *
     * <p>The bands give 30 min where a wind chill first rounds to -28 °C, 10 where to -40, 5 where to -48, 2 where to -55; between, the
     * time is interpolated on its logarithm so that it never jumps up as it gets colder (our judgement; it stays inside each band). The
     * formula {@code (-24.5 (0.667 V + 4.8) + 2111) (-4.8 - T)^-1.668}, V in km/h from 25, T below -15 °C, is from memory; above
     * 80 km/h its value at 80 is used, and it counts only where it gives 30 min or less. Healthy adults, dry skin, face; fingers on metal
     * freeze far sooner.
     *
     * @param air air temperature, in [-90, 60] °C
     * @param windMetresPerSecond wind at 10 m height, in [0, 90] m/s
     * @throws IllegalArgumentException if an argument is out of its range or NaN
     */
    public static OptionalDouble minutes(Celsius air, double windMetresPerSecond) {
        double windChill = WindChill.of(air, windMetresPerSecond).degrees();
        if (air.degrees() > 0) {
            return OptionalDouble.empty();
        }
        double shorter = Math.min(byBand(windChill), byFormula(air.degrees(), 3.6 * windMetresPerSecond));
        return shorter <= 30 ? OptionalDouble.of(shorter) : OptionalDouble.empty();
    }

    private static double byBand(double windChill) {
        if (windChill >= KNOT_WIND_CHILL[0]) { // printed as -27 or warmer
            return Double.POSITIVE_INFINITY;
        }
        int last = KNOT_WIND_CHILL.length - 1;
        for (int i = 0; i < last; i++) {
            if (windChill > KNOT_WIND_CHILL[i + 1]) {
                double share = (KNOT_WIND_CHILL[i] - windChill) / (KNOT_WIND_CHILL[i] - KNOT_WIND_CHILL[i + 1]);
                return KNOT_MINUTES[i] * Math.pow(KNOT_MINUTES[i + 1] / KNOT_MINUTES[i], share);
            }
        }
        return KNOT_MINUTES[last];
    }

    private static double byFormula(double air, double windKilometresPerHour) {
        if (windKilometresPerHour < 25 || air >= -15) {
            return Double.POSITIVE_INFINITY;
        }
        double v = Math.min(80, windKilometresPerHour);
        double minutes = (-24.5 * (0.667 * v + 4.8) + 2111) * Math.pow(-4.8 - air, -1.668);
        return minutes <= 30 ? minutes : Double.POSITIVE_INFINITY;
    }
}
