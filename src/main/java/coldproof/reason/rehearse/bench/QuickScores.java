package coldproof.reason.rehearse.bench;

import java.util.SplittableRandom;
import java.util.random.RandomGenerator;

/**
 * Scores without traces: noise-free score, response to the air as a straight line, and the same scatter as the full simulation. What it
 * leaves out is heat carried over from trial to trial and the bend where one limiter takes over from another. Immutable.
 */
public final class QuickScores {
    private final ScoreSpread spread;
    private final Weather weather;
    private final double leadSeconds;
    private final double workSeconds;
    private final double trialSeconds;
    private final double[] logScores;
    private final double[] logPerKelvin;

    QuickScores(BenchParameters parameters, double[] logScores, double[] logPerKelvin) {
        this.spread = parameters.spread();
        this.weather = parameters.weather();
        Workload workload = parameters.workload();
        leadSeconds = workload.leadSeconds();
        workSeconds = workload.workSeconds();
        trialSeconds = leadSeconds + workSeconds + workload.tailSeconds();
        this.logScores = logScores.clone();
        this.logPerKelvin = logPerKelvin.clone();
    }

    private QuickScores(ScoreSpread spread, double workSeconds, double[] logScores) {
        this.spread = spread;
        this.weather = Weather.STILL;
        this.leadSeconds = 0;
        this.workSeconds = workSeconds;
        this.trialSeconds = workSeconds;
        this.logScores = logScores.clone();
        this.logPerKelvin = new double[logScores.length];
    }

    /**
     * Scores of conditions whose means are given, in air exactly as planned.
     *
     * @param spread how scores scatter around them
     * @param workSeconds length of a trial's work, s, above 0
     * @param logScores natural logarithm of the noise-free score of each condition
     */
    public static QuickScores given(ScoreSpread spread, double workSeconds, double[] logScores) {
        Ranges.above("workSeconds", workSeconds, 0);
        return new QuickScores(spread, workSeconds, logScores);
    }

    /** Natural logarithm of the noise-free score under a condition, by its place in the list. */
    public double logScore(int condition) {
        return logScores[condition];
    }

    /** Change of the log score per kelvin of warmer air under a condition. */
    public double logPerKelvin(int condition) {
        return logPerKelvin[condition];
    }

    /** A study, drawn from this generator. Not safe for several threads. */
    public Study study(RandomGenerator random) {
        return new Study(random);
    }

    /** One study's scores. */
    public final class Study {
        private final ScoreScatter scatter;
        private final RandomGenerator airs;
        private AirPath air;
        private double sessionSeconds;

        private Study(RandomGenerator random) {
            scatter = new ScoreScatter(spread, workSeconds, new NormalDraws(new SplittableRandom(random.nextLong())));
            airs = new SplittableRandom(random.nextLong());
        }

        /** Opens the next session. */
        public void beginSession(boolean outdoors) {
            scatter.beginSession();
            air = new AirPath(weather, outdoors, new NormalDraws(new SplittableRandom(airs.nextLong())));
            sessionSeconds = 0;
        }

        /**
         * Natural logarithm of the next trial's score; higher is better.
         *
         * @param condition place in the list of conditions
         * @param pauseSeconds idle time before it, s, 0 or more
         * @throws IllegalStateException if no session has been opened
         */
        public double nextLogScore(int condition, double pauseSeconds) {
            if (air == null) {
                throw new IllegalStateException("open a session before the first trial");
            }
            air.advance(pauseSeconds + trialSeconds);
            double middle = sessionSeconds + pauseSeconds + leadSeconds + workSeconds / 2;
            sessionSeconds += pauseSeconds + trialSeconds;
            double log = logScores[condition] + scatter.nextLog() + Math.log(scatter.leftOfWork());
            return log + logPerKelvin[condition] * air.strayKelvins(middle);
        }
    }
}
