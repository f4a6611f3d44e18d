package coldproof.reason.rehearse.bench;

import java.util.SplittableRandom;
import java.util.random.RandomGenerator;

/**
 * One simulated study: scatter that belongs to the whole study, and the sessions in the order they are opened. Scores, weather and sensors
 * draw from streams of their own, so that another sensor leaves the scores as they were. Not safe for several threads.
 */
public final class BenchStudy {
    private final BenchParameters parameters;
    private final ScoreScatter scatter;
    private final RandomGenerator weather;
    private final NormalDraws loops;
    private final NormalDraws sensors;

    BenchStudy(BenchParameters parameters, RandomGenerator random) {
        this.parameters = parameters;
        scatter = new ScoreScatter(parameters.spread(), parameters.workload().workSeconds(), stream(random));
        weather = new SplittableRandom(random.nextLong());
        loops = stream(random);
        sensors = stream(random);
    }

    /** Opens the next session: the device stands soaked in the air of this condition, idle, its battery full. */
    public BenchSession session(BenchCondition condition) {
        scatter.beginSession();
        return new BenchSession(parameters, condition, scatter, stream(weather), loops, sensors);
    }

    private static NormalDraws stream(RandomGenerator random) {
        return new NormalDraws(new SplittableRandom(random.nextLong()));
    }
}
