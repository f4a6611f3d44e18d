package coldproof.face.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** {@code record} as a person or a script meets it; the workloads are those of any POSIX shell. */
@DisabledOnOs(OS.WINDOWS)
class RecordVerbTest {
    private static final String PLAN = """
            coldproof: 1
            title: Does the fan change the build?
            device: trail laptop
            metric: {name: build time, unit: s, better: lower}
            compare: {factor: fan, baseline: auto, against: maximum}
            matters: 2 %
            factors:
              fan: {change: per trial, levels: [auto, maximum]}
            layout: {trials: 4, order: counterbalanced}
            seed: 418
            """;

    @TempDir
    Path folder;

    @BeforeEach
    void frozen() throws IOException {
        Files.writeString(folder.resolve("plan.yaml"), PLAN);
        assertEquals(0, Call.of("plan", "freeze", "--study", folder.toString()).status());
    }

    private Call record(String... words) {
        return Call.of(Stream.concat(Stream.of("record", "--study", folder.toString()), Stream.of(words)).toArray(String[]::new));
    }

    private List<String> files() throws IOException {
        Path traces = folder.resolve("traces");
        if (!Files.isDirectory(traces)) {
            return List.of();
        }
        try (Stream<Path> inside = Files.list(traces)) {
            return inside.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }

    /** On Linux there is the utilisation at least, from /proc/stat; a row a second and one at the end make six in five seconds. */
    @Test
    @EnabledOnOs(OS.LINUX)
    void theTelemetryKeySaysWhatIsInTheLog() throws IOException {
        Call call = record("--json", "--", "sleep", "5.2");
        assertEquals(0, call.status(), call::err);
        JsonNode answer = JsonMapper.shared().readTree(call.out());
        JsonNode telemetry = answer.get("recorded").get(0).get("telemetry");
        List<String> lines = Files.readAllLines(folder.resolve(telemetry.get("file").asString()));
        assertEquals("traces/trial-001.csv", telemetry.get("file").asString());
        assertEquals(lines.size() - 1, telemetry.get("rows").asInt());
        assertTrue(telemetry.get("rows").asInt() >= 5, call::out);
        String[] headings = lines.get(0).split(",");
        boolean[] filled = new boolean[headings.length];
        for (String line : lines.subList(1, lines.size())) {
            String[] cells = line.split(",", -1);
            assertEquals(headings.length, cells.length, line);
            for (int i = 0; i < cells.length; i++) {
                filled[i] |= !cells[i].isEmpty();
            }
        }
        int columns = 0;
        for (int i = 1; i < filled.length; i++) {
            columns += filled[i] ? 1 : 0;
        }
        assertEquals(columns, telemetry.get("sensors").asInt(), "columns with a value");
        assertTrue(telemetry.get("costPercent").asDouble() > 0 && telemetry.get("costPercent").asDouble() < 100);
        assertEquals(7, answer.get("remaining").asInt());
        assertTrue(Stream.of(call.err().split("\n")).anyMatch(line -> line.startsWith("telemetry: traces/trial-001.csv, ")), call::err);
        JsonNode remarks = answer.get("remarks");
        assertEquals(String.format(Locale.ROOT, "%.2f %%", telemetry.get("costPercent").asDouble()),
                remarks.get(remarks.size() - 1).asString().replaceAll(".* at most (\\S+ %).*", "$1"));
    }

    @Test
    void aRunTooShortForACourseHasNoTelemetry() throws IOException {
        JsonNode answer = JsonMapper.shared().readTree(record("--json", "--", "true").out());
        assertTrue(answer.get("recorded").get(0).get("telemetry").isNull());
        assertEquals(List.of(), files());
    }

    @Test
    void aRunThatFailsLeavesWhatItWroteAndNothingElse() throws IOException {
        Call call = record("--", "sh", "-c", "echo one; echo two; echo three >&2; exit 4");
        assertEquals(2, call.status());
        assertTrue(call.err().contains("\ntrial 1: the workload ended with status 4; its last line was: three\n"), call::err);
        assertTrue(call.err().replaceAll("\\s+", " ").contains("What it wrote is in traces/trial-001-output.txt."), call::err);
        assertEquals(List.of("trial-001-output.txt"), files());
        assertEquals("one\ntwo\nthree\n", Files.readString(folder.resolve("traces/trial-001-output.txt")));
        assertFalse(Files.readString(folder.resolve("journal.jsonl")).contains("\"trial\""));
    }

    @Test
    void aScoreThatIsNotThereLeavesTheOutput() throws IOException {
        Call call = record("--score-pattern", "rate: ([0-9.]+)", "--", "sh", "-c", "echo rat: 12; echo done");
        assertTrue(call.err().contains("\ntrial 1: no score was found in the output; its last line was: done\n"), call::err);
        assertEquals("rat: 12\ndone\n", Files.readString(folder.resolve("traces/trial-001-output.txt")));
    }

    @Test
    void aCommandThatIsNotThereIsSaidWithoutJavasWords() {
        String said = record("--", "no-such-program-here").err();
        assertTrue(said.contains("\nno-such-program-here: the command cannot be started"), said);
        assertFalse(said.contains("error=") || said.contains("Cannot run"), said);
    }

    @Test
    void howManyTrialsIsANumberOrAWord() {
        Call call = record("--trials", "some", "--", "true");
        assertEquals(2, call.status());
        assertTrue(call.err().contains("Expected a whole number from 1, session or all."), call::err);
        assertEquals(3, record("--trials", "3", "--", "true").out().lines().filter(line -> line.startsWith("trial ")).count());
        assertTrue(record("--trials", "all", "--", "true").out().endsWith("All trials are done.\nNext: coldproof verdict\n"));
    }

    @Test
    void aPersonAtATerminalSeesThatItRunsAndTheLineGoesAway() {
        StringWriter err = new StringWriter();
        RunningLine line = new RunningLine(new Streams(new BufferedReader(new StringReader("")), new PrintWriter(new StringWriter()), new PrintWriter(err), true, 40, false));
        line.goesOn(125.4, OptionalDouble.of(71.04), OptionalDouble.empty());
        line.ends();
        assertEquals("\r2:05  die 71.0 °C  Ctrl-C stops it\r" + " ".repeat(34) + "\r", err.toString());
    }

    @Test
    void intoAPipeGoesOnlyThatItWaits() {
        StringWriter err = new StringWriter();
        RunningLine line = new RunningLine(new Streams(new BufferedReader(new StringReader("")), new PrintWriter(new StringWriter()), new PrintWriter(err), false, 80, false));
        line.waits(0, List.of("trial 1: battery at 38 %"));
        line.waits(2, List.of("trial 1: battery at 39 %"));
        line.goesOn(125.4, OptionalDouble.of(71.04), OptionalDouble.empty());
        line.ends();
        assertEquals("waits: trial 1: battery at 38 %\n", err.toString());
    }
}
