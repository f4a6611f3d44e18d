package coldproof.reason.rehearse.bench;

/**
 * How scores scatter on the log scale beyond what heat and controllers explain. All coefficients of variation and percents in percent.
 *
 * @param runCvPercent from run to run within a session, 0 or more
 * @param sessionCvPercent from session to session, 0 or more
 * @param driftPercentPerTrial steady change with every trial of the study, in (-100, 100)
 * @param firstTrialPercent how much slower the first trial of a session is; halves with each further trial; in [0, 100)
 * @param autocorrelatedCvPercent a part that lingers from trial to trial, 0 or more
 * @param autocorrelation correlation of that part between neighbouring trials, in [0, 1)
 * @param loopCvPercent from loop to loop within a trial; does not move the trial's score; 0 or more
 * @param loopAutocorrelation correlation between neighbouring loops, in [0, 1)
 * @param backgroundChance chance that a background task disturbs a trial, in [0, 1]
 */
public record ScoreSpread(double runCvPercent, double sessionCvPercent, double driftPercentPerTrial, double firstTrialPercent,
        double autocorrelatedCvPercent, double autocorrelation, double loopCvPercent, double loopAutocorrelation,
        double backgroundChance) {
    /** No scatter at all. */
    public static final ScoreSpread NONE = new ScoreSpread(0, 0, 0, 0, 0, 0, 0, 0, 0);

    /** Refuses what is out of range. */
    public ScoreSpread {
        Ranges.atLeast("runCvPercent", runCvPercent, 0);
        Ranges.atLeast("sessionCvPercent", sessionCvPercent, 0);
        Ranges.within("driftPercentPerTrial", driftPercentPerTrial, -50, 50);
        Ranges.within("firstTrialPercent", firstTrialPercent, 0, 50);
        Ranges.atLeast("autocorrelatedCvPercent", autocorrelatedCvPercent, 0);
        Ranges.within("autocorrelation", autocorrelation, 0, Math.nextDown(1.0));
        Ranges.atLeast("loopCvPercent", loopCvPercent, 0);
        Ranges.within("loopAutocorrelation", loopAutocorrelation, 0, Math.nextDown(1.0));
        Ranges.within("backgroundChance", backgroundChance, 0, 1);
    }

    /** Run-to-run and session-to-session scatter only. */
    public static ScoreSpread of(double runCvPercent, double sessionCvPercent) {
        return new ScoreSpread(runCvPercent, sessionCvPercent, 0, 0, 0, 0, 0, 0, 0);
    }
}
