package coldproof.benchmark;

import coldproof.stats.Tail;
import coldproof.stats.distribution.MultivariateT;
import coldproof.stats.distribution.NoncentralT;
import coldproof.stats.distribution.OwensQ;
import coldproof.stats.distribution.StudentT;
import coldproof.stats.randomisation.RandomisationResult;
import coldproof.stats.sequential.SequentialBoundary;
import coldproof.stats.sequential.Spending;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** Time of one call of each numeric kernel. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class KernelBenchmark {
    private final Tasks tasks = new Tasks();
    private final MultivariateT fourChanges = MultivariateT.oneFactor(new double[] {0.7, 0.7, 0.7, 0.7}, 22);
    private double t = 2.3;
    private int at;

    /** Tail of a noncentral t. */
    @Benchmark
    public double noncentralTail() {
        t = t == 2.3 ? 2.4 : 2.3; // no two calls alike
        return NoncentralT.survival(t, 14, 3.1);
    }

    /** Point of Student's t. */
    @Benchmark
    public double studentPoint() {
        t = t == 2.3 ? 2.4 : 2.3;
        return StudentT.upperPoint(0.01 * t, 14);
    }

    /** Power of two one-sided tests. */
    @Benchmark
    public double equivalencePower() {
        t = t == 2.3 ? 2.4 : 2.3;
        return OwensQ.bothTests(14, 1.76, 1.7 * t, -1.7 * t);
    }

    /** Adjusted p value of one of four changes. */
    @Benchmark
    public double adjustedP() {
        t = t == 2.3 ? 2.4 : 2.3;
        return fourChanges.anyBeyond(t, Tail.TWO);
    }

    /** Bounds of four looks. */
    @Benchmark
    public double fourLooks() {
        t = t == 2.3 ? 2.4 : 2.3;
        return SequentialBoundary.spending(Spending.OBRIEN_FLEMING_LIKE, 0.05, Tail.TWO, 0.1 * t, 0.5, 0.75, 1).z(3);
    }

    /** Fit of 8 sessions with Satterthwaite's degrees of freedom. */
    @Benchmark
    public double fitWithSatterthwaite() {
        return tasks.satterthwaite();
    }

    /** The same with Kenward and Roger's. */
    @Benchmark
    public double fitWithKenwardRoger() {
        return tasks.kenwardRoger();
    }

    /** Solving for the number of trials. */
    @Benchmark
    public int size() {
        return tasks.size(at++);
    }

    /** A million random re-assignments of 20 + 20 trials. */
    @Benchmark
    public RandomisationResult randomisation() {
        return tasks.randomisation();
    }

    /** All re-assignments of 20 + 20 trials. */
    @Benchmark
    public RandomisationResult exactRandomisation() {
        return tasks.exactRandomisation();
    }
}
