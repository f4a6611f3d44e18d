package coldproof.reason.limiter;

import coldproof.trace.Blocks;
import coldproof.trace.Channel;

/**
 * Who held the device in which part of the last half, told block by block from the die at its limit and power at its plateau.
 *
 * @param heat share of the time the die was at its limit and power not at its plateau, half where power was near it
 * @param power share of the time power was at its plateau, half where it was only near it and the die at its limit
 */
record Shares(double heat, double power) {
    private static final double AT_PLATEAU = 0.007; // relative
    private static final double HELD_AT_PLATEAU = 0.002; // relative
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
                    boolean exactly = Math.abs(watts[i] / plateauWatts - 1) < HELD_AT_PLATEAU; // a die that held the device would take power off it
                    heat += hot ? exactly ? 0 : full ? 0.5 : 1 : 0;
                    power += full ? hot && !exactly ? 0.5 : 1 : 0;
                    blocks++;
                }
            }
        }
        return blocks == 0 ? UNKNOWN : new Shares(heat / blocks, power / blocks);
    }
}
