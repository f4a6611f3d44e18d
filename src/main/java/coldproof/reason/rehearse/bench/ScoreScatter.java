package coldproof.reason.rehearse.bench;

import coldproof.quantity.LogRatio;

/** The scatter of log scores over one study, trial after trial; the same for the full simulation and for the quick one. */
final class ScoreScatter {
    private static final double STOLEN_LEAST = 0.15; // share of the rate a background task takes, invented
    private static final double STOLEN_MOST = 0.4;
    private static final double DISTURBED_LEAST_SECONDS = 25;
    private static final double DISTURBED_MOST_SECONDS = 90;
    private final ScoreSpread spread;
    private final double workSeconds;
    private final NormalDraws draws;
    private final double runLogSd;
    private final double sessionLogSd;
    private final double driftLog;
    private final double lingeringLogSd;
    private final double innovation;
    private double sessionLog;
    private double lingering;
    private double firstTrialLog;
    private long trials;
    private double stolenShare;
    private double disturbedFromSeconds;
    private double disturbedSeconds;

    ScoreScatter(ScoreSpread spread, double workSeconds, NormalDraws draws) {
        this.spread = spread;
        this.workSeconds = workSeconds;
        this.draws = draws;
        runLogSd = LogRatio.logSdOfCv(spread.runCvPercent());
        sessionLogSd = LogRatio.logSdOfCv(spread.sessionCvPercent());
        driftLog = Math.log1p(spread.driftPercentPerTrial() / 100);
        lingeringLogSd = LogRatio.logSdOfCv(spread.autocorrelatedCvPercent());
        innovation = Math.sqrt(1 - spread.autocorrelation() * spread.autocorrelation());
        lingering = lingeringLogSd > 0 ? draws.next() : 0;
    }

    void beginSession() {
        sessionLog = sessionLogSd > 0 ? sessionLogSd * draws.next() : 0;
        firstTrialLog = Math.log1p(-spread.firstTrialPercent() / 100);
    }

    /** Log factor of the next trial's score, the background task left out. */
    double nextLog() {
        double log = sessionLog + firstTrialLog + driftLog * trials;
        firstTrialLog /= 2;
        trials++;
        if (runLogSd > 0) {
            log += runLogSd * draws.next();
        }
        if (lingeringLogSd > 0) {
            log += lingeringLogSd * lingering;
            lingering = spread.autocorrelation() * lingering + innovation * draws.next();
        }
        drawDisturbance();
        return log;
    }

    boolean isDisturbed() {
        return disturbedSeconds > 0;
    }

    /** What a background task leaves of the rate at this moment of the work, 1 without one. */
    double leftAt(double workElapsedSeconds) {
        double within = workElapsedSeconds - disturbedFromSeconds;
        return within >= 0 && within < disturbedSeconds ? 1 - stolenShare : 1;
    }

    /** What a background task leaves of the rate over the whole work. */
    double leftOfWork() {
        return 1 - stolenShare * disturbedSeconds / workSeconds;
    }

    private void drawDisturbance() {
        stolenShare = 0;
        disturbedSeconds = 0;
        if (spread.backgroundChance() > 0 && draws.uniform() < spread.backgroundChance()) {
            stolenShare = STOLEN_LEAST + (STOLEN_MOST - STOLEN_LEAST) * draws.uniform();
            double wanted = DISTURBED_LEAST_SECONDS + (DISTURBED_MOST_SECONDS - DISTURBED_LEAST_SECONDS) * draws.uniform();
            disturbedSeconds = Math.min(wanted, workSeconds);
            disturbedFromSeconds = (workSeconds - disturbedSeconds) * draws.uniform();
        }
    }
}
