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
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TraceVerbTest {
    @TempDir
    Path folder;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();
    private Path log;

    @BeforeEach
    void write() throws IOException {
        StringBuilder text = new StringBuilder("time_s,die_c,power_w,clock_mhz,fan_rpm\n");
        for (int t = -10; t < 125; t++) {
            boolean work = t > 0 && t <= 120;
            boolean boost = t <= 20;
            text.append(t).append(',').append(work ? boost ? 60 + t : 80 + t % 2 * 0.5 : 30).append(',').append(work ? boost ? 40 : 25 + 0.1 * (t % 3) : 2)
                    .append(',').append(work ? boost ? 4000 : 3100 + t % 5 : 900).append(",2400\n");
        }
        log = Files.writeString(folder.resolve("log.csv"), text);
    }

    private int run(int columns, String... words) {
        Streams streams = new Streams(new BufferedReader(new StringReader("")), new PrintWriter(out), new PrintWriter(err), false, columns, false);
        return new CommandLineFace(streams).run(words);
    }

    @Test
    void theDocumentHasTheKeysOfTheContract() {
        assertEquals(0, run(80, "trace", "--json", log.toString(), "--ambient", "20C"), err::toString);
        String json = out.toString();
        for (String key : new String[] {"\"rows\":135,", "\"samplingSeconds\":1.0", "\"channel\":\"die temperature\",\"column\":\"die_c\",\"unit\":\"°C\"",
            "\"gaps\":0", "\"from\":0.0", "\"kind\":\"boost\"", "\"kind\":\"sustained\"", "\"means\":{", "\"boostSeconds\":", "\"sustained\":{\"power\":25.1",
            "\"clock\":310", "\"dieTemperature\":80.", "\"fan\":2400.0", "\"timeConstantSeconds\":", "\"thermalResistance\":2.", "\"steady\":true", "\"problems\":["}) {
            assertTrue(json.contains(key), key + " in " + json);
        }
        assertEquals(1, json.lines().count());
    }

    @ParameterizedTest
    @ValueSource(ints = {60, 80, 200})
    void theTextFitsTheScreenAndDrawsEveryPanel(int columns) {
        assertEquals(0, run(columns, "trace", log.toString()), err::toString);
        String text = out.toString();
        text.lines().filter(line -> !line.contains(folder.toString())).forEach(line -> assertTrue(line.length() <= columns, columns + ": " + line));
        for (String word : new String[] {"clock, MHz", "die temperature, °C", "package power, W", "fan speed, rpm", "sustained", "s from the start of the work"}) {
            assertTrue(text.contains(word), word);
        }
    }

    /** Clocks in the European Union went from 3:00 back to 2:00 on 25 October 2026 (Directive 2000/84/EC, article 3: the last Sunday of October). */
    @Test
    void theHourThatSummerTimeGivesBackLosesNoRow() throws IOException {
        StringBuilder text = new StringBuilder("time,die_c,power_w\n");
        for (int t = 0; t < 200; t++) {
            int clock = 2 * 3600 + 58 * 60 + t - (t < 120 ? 0 : 3600);
            text.append(String.format(java.util.Locale.ROOT, "2026-10-25 %02d:%02d:%02d,%d,%d%n", clock / 3600, clock / 60 % 60, clock % 60, t > 10 ? 70 : 30, t > 10 ? 30 : 2));
        }
        assertEquals(0, run(80, "trace", "--json", Files.writeString(folder.resolve("october.csv"), text).toString()), err::toString);
        String json = out.toString();
        assertTrue(json.contains("\"rows\":200,") && json.contains("\"gaps\":0") && json.contains("\"seconds\":189"), json);
        assertTrue(json.contains("\"line\":122,\"text\":\"the clock was set back by an hour"), json);
        assertFalse(json.contains("left out"), json);
    }

    private String traceOfTheStudy(int status, String... more) {
        String[] words = Stream.concat(Stream.of("trace", log.toString(), "--json", "--study", folder.toString()), Stream.of(more)).toArray(String[]::new);
        Call call = Call.of(words);
        assertEquals(status, call.status(), call::err);
        return status == 0 ? call.out() : call.err();
    }

    @Test
    void aStudyRemembersWhatWasSetForItsLog() throws IOException {
        String bySetting = "\"channel\":\"system power\",\"column\":\"power_w\"";
        assertTrue(traceOfTheStudy(0, "--map", "system=power_w").contains(bySetting));
        assertFalse(traceOfTheStudy(0).contains(bySetting), "no plan, no study: nothing is remembered");
        Files.writeString(folder.resolve("plan.yaml"), "coldproof: 1\n");
        assertEquals(2, Call.of("trace", log.toString(), "--study", folder.toString(), "--map", "system=none").status());
        assertFalse(traceOfTheStudy(0).contains(bySetting), "what was refused is not remembered");
        assertTrue(traceOfTheStudy(0, "--map", "system=power_w").contains(bySetting));
        assertTrue(traceOfTheStudy(0).contains(bySetting));
        Files.writeString(log, Files.readString(log).replace("power_w", "watts"));
        assertTrue(traceOfTheStudy(2).contains("remembered here: system=power_w"));
    }

    @Test
    void aWrongChannelIsRefusedWithTheNearestWord() {
        assertEquals(2, run(80, "trace", log.toString(), "--map", "powr=power_w"));
        assertTrue(err.toString().contains("Nearest: power"), err::toString);
        assertEquals(2, run(80, "trace"));
    }
}
