package coldproof.plan;

/**
 * The rates of wrong answers the person accepts.
 *
 * @param falseAlarm probability of calling no change a change (type I), two-sided, in (0, 0.5)
 * @param missedGain probability of missing a gain that just matters (type II), in (0, 1)
 */
public record Errors(double falseAlarm, double missedGain) {
    /** Refuses what is no probability of use. */
    public Errors {
        if (!(falseAlarm > 0 && falseAlarm < 0.5)) {
            throw new IllegalArgumentException("false alarm " + falseAlarm + " is outside (0, 0.5)");
        }
        if (!(missedGain > 0 && missedGain < 1)) {
            throw new IllegalArgumentException("missed gain " + missedGain + " is outside (0, 1)");
        }
    }

    /** The power wanted: 1 - missed gain. */
    public double power() {
        return 1 - missedGain;
    }
}
