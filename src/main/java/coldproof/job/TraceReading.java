package coldproof.job;

import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import coldproof.reason.limiter.LimiterTrial;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.IntConsumer;
import java.util.stream.IntStream;

/**
 * The logs of many trials, read on all processors; the outcome is the same on any number of them.
 *
 * @param trials what was read, in the order of the entries; empty where a log could not be read
 * @param problems what was wrong with logs, in the same order
 */
record TraceReading(List<Optional<LimiterTrial>> trials, List<Problem> problems) {
    /** Copies. */
    TraceReading {
        trials = List.copyOf(trials);
        problems = List.copyOf(problems);
    }

    /** Those that could be read. */
    List<LimiterTrial> readable() {
        return trials.stream().flatMap(Optional::stream).toList();
    }

    private record One(Optional<LimiterTrial> trial, List<Problem> problems) {}

    /**
     * Reads and summarises each log; only the summaries are kept.
     *
     * @param tracesRead told how many are read so far, from one thread at a time
     */
    static TraceReading of(List<LimiterTable.Entry> entries, List<String> mappings, IntConsumer tracesRead) {
        AtomicInteger done = new AtomicInteger();
        List<One> all = IntStream.range(0, entries.size()).parallel().mapToObj(i -> {
            One one = one(entries.get(i), mappings);
            synchronized (done) {
                tracesRead.accept(done.incrementAndGet());
            }
            return one;
        }).toList();
        List<Problem> problems = new ArrayList<>();
        all.forEach(one -> problems.addAll(one.problems()));
        return new TraceReading(all.stream().map(One::trial).toList(), problems);
    }

    private static One one(LimiterTable.Entry entry, List<String> mappings) {
        try {
            TraceJob.Result result = TraceJob.run(entry.log(), mappings, OptionalDouble.empty(), bytes -> {});
            return new One(Optional.of(new LimiterTrial(entry.levels(), entry.session(), entry.order(), result.summary(), entry.logScore(), entry.loops())), List.of());
        } catch (Refused refused) {
            return new One(Optional.empty(), refused.problems());
        }
    }
}
