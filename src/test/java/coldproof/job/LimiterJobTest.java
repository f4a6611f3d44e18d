package coldproof.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.files.table.Table;
import coldproof.plan.Better;
import coldproof.reason.limiter.KnownLimits;
import coldproof.reason.limiter.Limiter;
import coldproof.reason.limiter.LimiterAnswer;
import coldproof.reason.limiter.LimiterTrial;
import coldproof.reason.limiter.Limiters;
import coldproof.trace.Channel;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class LimiterJobTest {
    @TempDir
    Path folder;

    static List<String> benches() {
        return SimulatedBenches.names();
    }

    private static OptionalDouble limit(String cell) {
        return cell.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(Double.parseDouble(cell));
    }

    private static String word(String truth) {
        return truth.startsWith("both") ? "mixed" : truth.startsWith("clock") ? "clock" : truth;
    }

    /**
     * Truth: what the simulator let hold the score in the last half of the work (test resources). Every condition of all 20 benches is named
     * rightly with the maker's limits; without them, one of bench 11, where heat and power take turns, is left open. The goal was nine in ten
     * and none wrong. Sustained power within 1 % of the truth of a
     * soaked trial, but for benches 16 and 20 (2.5 %), whose sessions ran in air up to 2 K off the plan that the truth supposes.
     */
    @ParameterizedTest
    @MethodSource("benches")
    void everyLimiterIsNamedRightly(String bench) throws IOException {
        Path trials = SimulatedBenches.unpack(bench, folder);
        Table.Row known = SimulatedBenches.of(SimulatedBenches.truths("benches.csv"), bench).get(0);
        KnownLimits stated = new KnownLimits(limit(known.text(5)), limit(known.text(6)), limit(known.text(7)));
        List<Table.Row> truths = SimulatedBenches.of(SimulatedBenches.truths("conditions.csv"), bench);
        List<LimiterTrial> read = LimiterJob.trials(LimiterTable.entries(new LimiterQuestion(trials, "trace", Arrays.asList(known.text(4).split(" ")),
                Optional.of(known.text(2)), known.text(3).equals("lower") ? Better.LOWER : Better.HIGHER, Optional.of("session"), Optional.of("order"), List.of(),
                stated)), List.of(), count -> {});
        for (KnownLimits limits : List.of(stated, KnownLimits.NONE)) {
            LimiterAnswer answer = Limiters.explain(read, limits);
            boolean mayBeOpen = bench.equals("bench-11") && limits == KnownLimits.NONE;
            for (Table.Row truth : truths) {
                LimiterAnswer.OfCondition found = condition(answer, truth.text(1));
                List<String> acceptable = Arrays.stream(truth.text(3).split("[|]")).map(LimiterJobTest::word).toList();
                assertTrue(acceptable.contains(found.limiter().word()) || mayBeOpen && found.limiter() == Limiter.UNCLEAR, () -> bench + " " + truth.text(1) + ": " + found);
                double watts = Double.parseDouble(truth.text(6));
                double tolerance = bench.equals("bench-16") || bench.equals("bench-20") ? 0.025 : 0.01;
                assertEquals(watts, found.sustained().get(Channel.PACKAGE_POWER), tolerance * watts, () -> bench + " " + truth.text(1));
            }
        }
    }

    private static LimiterAnswer.OfCondition condition(LimiterAnswer answer, String levels) {
        Map<String, String> wanted = new TreeMap<>();
        for (String level : levels.split(" ")) {
            wanted.put(level.substring(0, level.indexOf('=')), level.substring(level.indexOf('=') + 1));
        }
        return answer.conditions().stream().filter(condition -> condition.levels().entrySet().containsAll(wanted.entrySet())).findFirst()
                .orElseThrow(() -> new AssertionError(levels + " is not among " + answer.conditions()));
    }

    @Test
    void aTableWrittenWhereFoldersArePartedByTheOtherStrokeFindsItsLogs() throws IOException {
        Path trials = SimulatedBenches.unpack("bench-01", folder);
        Files.writeString(trials, Files.readString(trials).replace("traces/", "traces\\"));
        LimiterQuestion question = new LimiterQuestion(trials, "trace", List.of("ambient"), Optional.empty(), Better.HIGHER, Optional.empty(), Optional.empty(),
                List.of(), KnownLimits.NONE);
        assertTrue(LimiterTable.entries(question).stream().allMatch(entry -> Files.exists(entry.log())));
    }
}
