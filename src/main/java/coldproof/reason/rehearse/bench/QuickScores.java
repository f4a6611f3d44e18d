package coldproof.reason.rehearse.bench;

import java.util.List;
import java.util.SplittableRandom;
import java.util.random.RandomGenerator;

/**
 * Scores without traces: noise-free score, response to the air as a straight line, and the same scatter as the full simulation. What it
 * leaves out is heat carried over from trial to trial and the bend where one limiter takes over from another. Immutable.
 */
public final class QuickScores {
    private final BenchParameters parameters;
    private final List<BenchCondition> conditions;
    private final double[] logScores;
    private final double[] logPerKelvin;

    QuickScores(BenchParameters parameters, List<BenchCondition> conditions, double[] logScores, double[] logPerKelvin) {
        this.parameters = parameters;
        this.conditions = List.copyOf(conditions);
        this.logScores = logScores.clone();
        this.logPerKelvin = logPerKelvin.clone();
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
        private final RandomGenerator weather;
        private AirPath air;
        private double sessionSeconds;

        private Study(RandomGenerator random) {
            scatter = new ScoreScatter(parameters.spread(), parameters.workload().workSeconds(),
                    new NormalDraws(new SplittableRandom(random.nextLong())));
            weather = new SplittableRandom(random.nextLong());
        }

        /** Opens the next session. */
        public void beginSession(boolean outdoors) {
            scatter.beginSession();
            air = new AirPath(parameters.weather(), outdoors, new NormalDraws(new SplittableRandom(weather.nextLong())));
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
            Workload workload = parameters.workload();
            double trialSeconds = workload.leadSeconds() + workload.workSeconds() + workload.tailSeconds();
            air.advance(pauseSeconds + trialSeconds);
            double middle = sessionSeconds + pauseSeconds + workload.leadSeconds() + workload.workSeconds() / 2;
            sessionSeconds += pauseSeconds + trialSeconds;
            double log = logScores[condition] + scatter.nextLog() + Math.log(scatter.leftOfWork());
            return log + logPerKelvin[condition] * air.strayKelvins(middle);
        }

        /** The conditions, in the order of their places. */
        public List<BenchCondition> conditions() {
            return conditions;
        }
    }
}
