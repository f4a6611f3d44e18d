package coldproof.trace;

/**
 * The stretch at the beginning of the work in which the device draws more than it can sustain.
 *
 * @param seconds from the start of the work until the five-second mean of package power falls below half way between its level at two to
 *     six seconds and its mean over the last half of the work; 0 when the two differ by less than 8 %; NaN when power was not measured or
 *     the work is too short to tell
 * @param watts level at two to six seconds
 */
public record Boost(double seconds, double watts) {
    private static final double LEVEL_FROM = 2; // s
    private static final double LEVEL_TO = 6; // s
    private static final double HALF_WINDOW = 2.5; // s
    private static final double DIFFERENT = 0.08;
    private static final double SHORTEST_WORK = 12; // s

    /** The boost of a work. */
    static Boost of(Series series, Work work, Channel power) {
        if (!series.has(power) || work.lengthSeconds() < SHORTEST_WORK) {
            return new Boost(Double.NaN, Double.NaN);
        }
        double level = mean(series, work, power, LEVEL_FROM, LEVEL_TO);
        double sustained = mean(series, work, power, work.lengthSeconds() / 2, work.lengthSeconds());
        if (Double.isNaN(level) || Double.isNaN(sustained)) {
            return new Boost(Double.NaN, level);
        }
        if (Math.abs(level / sustained - 1) < DIFFERENT) {
            return new Boost(0, level);
        }
        if (level < sustained) {
            return new Boost(0, level);
        }
        return new Boost(crossing(series, work, power, (level + sustained) / 2), level);
    }

    /**
     * Where the five-second mean falls below a border, between the last row above and the first below, half a row later: a definition by
     * whole rows would say the first row below, so the difference is at most half a row, even where noise moves the crossing to the next.
     */
    private static double crossing(Series series, Work work, Channel power, double border) {
        double lastAt = Double.NaN;
        double last = Double.NaN;
        for (int i = work.from(); i < work.to(); i++) {
            double at = work.middleSeconds(series, i);
            double around = mean(series, work, power, at - HALF_WINDOW, at + HALF_WINDOW);
            if (at >= (LEVEL_FROM + LEVEL_TO) / 2 && around < border) {
                return Double.isNaN(last) || last <= border ? at
                        : lastAt + (at - lastAt) * (last - border) / (last - around) + series.stepSeconds() / 2;
            }
            if (!Double.isNaN(around)) {
                last = around;
                lastAt = at;
            }
        }
        return 0;
    }

    private static double mean(Series series, Work work, Channel power, double fromSeconds, double toSeconds) {
        double sum = 0;
        int count = 0;
        double slack = 0.05 * series.stepSeconds(); // time stamps jitter
        for (int i = work.entryAt(series, fromSeconds - slack); i < work.to(); i++) {
            double at = work.middleSeconds(series, i);
            double value = series.value(power, i);
            if (at > fromSeconds - slack && at < toSeconds + slack && !Double.isNaN(value)) {
                sum += value;
                count++;
            }
            if (at > toSeconds + slack) {
                break;
            }
        }
        return count == 0 ? Double.NaN : sum / count;
    }
}
