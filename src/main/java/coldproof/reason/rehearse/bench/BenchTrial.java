package coldproof.reason.rehearse.bench;

/**
 * One simulated trial.
 *
 * @param condition the setting it was run under
 * @param score mean rate over the work with all scatter, in the metric's unit; higher is better
 * @param loopRates rate of each loop; their mean is the score
 * @param workFromSeconds when the work began, s since the log began
 * @param workSeconds length of the work, s
 * @param disturbed whether a background task took part of the rate
 * @param trace the telemetry
 * @param truth what was true
 */
public record BenchTrial(BenchCondition condition, double score, double[] loopRates, double workFromSeconds, double workSeconds,
        boolean disturbed, BenchTrace trace, BenchTruth truth) {
    /** Copies the loops. */
    public BenchTrial {
        loopRates = loopRates.clone();
    }

    @Override
    public double[] loopRates() {
        return loopRates.clone();
    }

    /** The same result as a lower-is-better metric: seconds a fixed amount of work would have taken. */
    public double elapsedSeconds(double work) {
        return work / score;
    }
}
