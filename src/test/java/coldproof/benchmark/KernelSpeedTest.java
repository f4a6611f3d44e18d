package coldproof.benchmark;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Collection;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;

/** Runs the kernels: {@code mvn -B test -Pbenchmark}. Times are printed, not judged: the machine may be busy. */
@Tag("benchmark")
class KernelSpeedTest {
    @Test
    void everyKernelIsTimed() throws RunnerException {
        Collection<RunResult> results = new Runner(new OptionsBuilder().include(KernelBenchmark.class.getName()).build()).run();
        assertEquals(10, results.size());
    }
}
