package coldproof.benchmark;

import java.lang.management.ManagementFactory;
import java.util.Locale;
import java.util.function.IntToDoubleFunction;

/**
 * Prints how often a second of processor time each task is done, warm, one thread: the best of several rounds. Processor time, as in the other
 * languages' scripts, so that a busy machine disturbs little.
 */
public final class Rates {
    private static final int ROUNDS = 7;
    private static final double SECONDS = 1.0;

    private Rates() {}

    /** Prints one line a task: name, tab, times a second, tab, a result to compare. */
    public static void main(String[] arguments) {
        Tasks tasks = new Tasks();
        print("randomisation", i -> tasks.randomisation().p());
        print("exact-randomisation", i -> tasks.exactRandomisation().p());
        print("satterthwaite", i -> tasks.satterthwaite());
        print("kenward-roger", i -> tasks.kenwardRoger());
        print("size", tasks::size);
    }

    private static long cpuNanos() {
        return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    }

    private static void print(String name, IntToDoubleFunction task) {
        double best = 0;
        double result = 0;
        for (int round = 0; round < ROUNDS; round++) {
            long start = cpuNanos();
            long end = start + (long) (SECONDS * 1e9);
            int done = 0;
            do {
                double value = task.applyAsDouble(done);
                result = done == 0 ? value : result;
                done++;
            } while (cpuNanos() < end);
            best = Math.max(best, done / ((cpuNanos() - start) / 1e9));
        }
        System.out.println(String.format(Locale.ROOT, "%s\t%.6g\t%.6g", name, best, result));
    }
}
