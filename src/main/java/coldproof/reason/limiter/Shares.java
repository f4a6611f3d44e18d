package coldproof.reason.limiter;

import coldproof.trace.Blocks;
import coldproof.trace.Channel;

/**
 * Who held the device in which part of the last half, told block by block from the die at its limit and power at its plateau.
 *
 * @param heat share of the time the die alone was at its limit, half where both were
 * @param power share of the time power alone was at its plateau, half where both were
 */
record Shares(double heat, double power) {
    private static final double AT_PLATEAU = 0.007; // relative
    private static final double AT_LIMIT = 1.0; // K
    /** Neither is known. */
    static final Shares UNKNOWN = new Shares(Double.NaN, Double.NaN);

    /** Shares over the soaked trials; unknown unless both levels are. */
    static Shares of(Condition condition, double limitCelsius, double plateauWatts) {
        if (Double.isNaN(limitCelsius) || Double.isNaN(plateauWatts) || StudyLimits.isSaw(condition)) {
            return UNKNOWN;
        }
        double heat = 0;
        double power = 0;
        int blocks = 0;
        for (LimiterTrial trial : condition.soaked()) {
            Blocks course = trial.trace().blocks();
            double[] die = course.channels().get(Channel.DIE_TEMPERATURE);
            double[] watts = course.channels().get(Channel.PACKAGE_POWER);
            for (int i = course.count() / 2; die != null && watts != null && i < course.count(); i++) {
                if (!Double.isNaN(die[i]) && !Double.isNaN(watts[i])) {
                    boolean hot = die[i] > limitCelsius - AT_LIMIT;
                    boolean full = watts[i] > (1 - AT_PLATEAU) * plateauWatts;
                    heat += hot ? full ? 0.5 : 1 : 0;
                    power += full ? hot ? 0.5 : 1 : 0;
                    blocks++;
                }
            }
        }
        return blocks == 0 ? UNKNOWN : new Shares(heat / blocks, power / blocks);
    }
}
