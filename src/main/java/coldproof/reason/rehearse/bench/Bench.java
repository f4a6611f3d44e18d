package coldproof.reason.rehearse.bench;

import java.util.List;
import java.util.random.RandomGenerator;

/**
 * A simulated device on a simulated bench. {@link #truth} says what is true under a condition, {@link #study} runs trials with traces,
 * {@link #quickScores} draws scores alone, thousands of studies a second. Immutable.
 */
public final class Bench {
    private static final double SENSITIVITY_KELVINS = 2; // half the step with which the response to the air is found
    private final BenchParameters parameters;

    private Bench(BenchParameters parameters) {
        this.parameters = parameters;
    }

    /** The bench of these parameters. */
    public static Bench of(BenchParameters parameters) {
        return new Bench(parameters);
    }

    /** What it was made of. */
    public BenchParameters parameters() {
        return parameters;
    }

    /** What is true of one trial under this condition, from a soaked start, in air exactly as planned, with no scatter. */
    public BenchTruth truth(BenchCondition condition) {
        BenchParameters calm = parameters.withoutChance();
        return new BenchStudy(calm, new Unasked()).session(condition).run(condition).truth();
    }

    /** A study on this bench: sessions after sessions, with all its scatter, from this generator. */
    public BenchStudy study(RandomGenerator random) {
        return new BenchStudy(parameters, random);
    }

    /**
     * Scores without traces for these conditions. The noise-free score and its response to the air are simulated once here; after that a
     * trial costs a few draws.
     */
    public QuickScores quickScores(List<BenchCondition> conditions) {
        double[] logScores = new double[conditions.size()];
        double[] logPerKelvin = new double[conditions.size()];
        for (int i = 0; i < logScores.length; i++) {
            BenchCondition condition = conditions.get(i);
            logScores[i] = Math.log(truth(condition).noiseFreeRate());
            logPerKelvin[i] = (Math.log(truth(warmer(condition, SENSITIVITY_KELVINS)).noiseFreeRate())
                    - Math.log(truth(warmer(condition, -SENSITIVITY_KELVINS)).noiseFreeRate())) / (2 * SENSITIVITY_KELVINS);
        }
        return new QuickScores(parameters, logScores, logPerKelvin);
    }

    private static BenchCondition warmer(BenchCondition condition, double kelvins) {
        return new BenchCondition(condition.airCelsius() + kelvins, condition.outdoors(), condition.fan(), condition.source(),
                condition.pasteScale());
    }

    /** A generator for a bench without chance: it gives the seeds of the streams, and no stream is ever asked. */
    private static final class Unasked implements RandomGenerator {
        @Override
        public long nextLong() {
            return 0;
        }
    }
}
