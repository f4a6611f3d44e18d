package coldproof.physics;

import coldproof.quantity.Celsius;

/**
 * Work and warm-up schedule for a four-hour shift in deep cold, as published by the conference of governmental industrial hygienists
 * (ACGIH) and quoted by the occupational safety administration of the United States: longest stay between warm breaks of 10 min.
 *
 * @param longestStayMinutes longest stay in min; infinite while ordinary breaks do, 0 when work that can wait should stop
 * @param warmBreaks warm breaks in four hours
 */
public record WarmUpSchedule(double longestStayMinutes, int warmBreaks) {
    private static final double[] STEP_STARTS = {-26, -29, -32, -35, -38, -40, -43}; // °C, rounded to whole degrees
    private static final double WIND_STEP = 8; // km/h

    /** Whether the schedule says to stop. */
    public boolean saysStop() {
        return longestStayMinutes == 0;
    }

    /**
     * The schedule for an air temperature and wind.
     *
     * <p>Each 8 km/h of wind counts as one step colder. Light or stationary work counts as one step colder again: a person at a bench
     * does not warm themselves by working.
     *
     * @param air air temperature, in [-90, 60] °C
     * @param windMetresPerSecond wind, in [0, 90] m/s
     * @param stationary whether the work is done sitting or standing still
     */
    public static WarmUpSchedule of(Celsius air, double windMetresPerSecond, boolean stationary) {
        long rounded = Math.round(Bounds.within("air temperature", air.degrees(), -90, 60, "°C"));
        double wind = 3.6 * Bounds.within("wind", windMetresPerSecond, 0, WindChill.STRONGEST_WIND, "m/s");
        if (rounded > STEP_STARTS[0]) {
            return ordinary();
        }
        int row = 0;
        while (row + 1 < STEP_STARTS.length && rounded <= STEP_STARTS[row + 1]) {
            row++;
        }
        int step = row + (int) Math.floor(wind / WIND_STEP + 1e-9) + (stationary ? 1 : 0);
        return switch (Math.min(step, 6)) {
            case 0, 1 -> ordinary();
            case 2 -> new WarmUpSchedule(75, 2);
            case 3 -> new WarmUpSchedule(55, 3);
            case 4 -> new WarmUpSchedule(40, 4);
            case 5 -> new WarmUpSchedule(30, 5);
            default -> new WarmUpSchedule(0, 0);
        };
    }

    private static WarmUpSchedule ordinary() {
        return new WarmUpSchedule(Double.POSITIVE_INFINITY, 1);
    }
}
