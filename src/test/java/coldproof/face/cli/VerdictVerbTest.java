package coldproof.face.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

class VerdictVerbTest {
    @TempDir
    Path folder;

    private JsonNode verdict(String table, int status, String... more) throws IOException {
        return verdict(table.getBytes(StandardCharsets.UTF_8), status, more);
    }

    private JsonNode verdict(byte[] table, int status, String... more) throws IOException {
        Path file = folder.resolve("trials.csv");
        Files.write(file, table);
        String[] fixed = {"verdict", "--json", "--trials", file.toString(), "--metric", "rate", "--factor", "ambient", "--baseline", "room", "--against", "chilled"};
        String[] words = new String[fixed.length + more.length];
        System.arraycopy(fixed, 0, words, 0, fixed.length);
        System.arraycopy(more, 0, words, fixed.length, more.length);
        Call call = Call.of(words);
        assertEquals(status, call.status(), call.out() + call.err());
        return new JsonMapper().readTree(call.out());
    }

    /** Invented: two outings, one of each level, with a difference no t test on trials would miss. */
    private static String oneSessionOfEach() {
        SplittableRandom random = new SplittableRandom(7);
        StringBuilder table = new StringBuilder("ambient,sitting,place,rate\n");
        for (int i = 0; i < 40; i++) {
            table.append(i < 20 ? "room,1," : "chilled,2,").append(i).append(',').append((i < 20 ? 50 : 53) + random.nextDouble()).append('\n');
        }
        return table.toString();
    }

    @Test
    void oneSessionOfEachLevelNeverPassesHoweverManyTrialsItHolds() throws IOException {
        for (String[] more : new String[][] {{}, {"--order", "place"}, {"--change", "session"}, {"--change", "session", "--order", "place"}}) {
            String[] words = new String[more.length + 4];
            System.arraycopy(new String[] {"--better", "higher", "--session", "sitting"}, 0, words, 0, 4);
            System.arraycopy(more, 0, words, 4, more.length);
            JsonNode json = verdict(oneSessionOfEach(), ExitStatus.UNDECIDED, words);
            assertEquals("undecided", json.get("verdict").asString());
            assertTrue(json.get("method").asString().contains("only one session"), json.toString());
            assertEquals(100 * Math.expm1(json.get("logEffect").asDouble()), json.get("effectPercent").asDouble(), 1e-9);
            assertEquals(6, json.get("effectPercent").asDouble(), 0.5, "53.5 against 50.5, but for the scatter");
            assertEquals("possible", json.get("atLeastMatters").asString());
            for (String none : new String[] {"standardErrorLog", "df", "t", "p", "interval", "equivalenceInterval"}) {
                assertTrue(json.get(none).isNull(), none);
            }
            assertTrue(json.get("components").get("sessionCv").isNull() && json.get("components").get("runCv").asDouble() > 0, json.toString());
        }
    }

    /** Invented: four sittings in turn, two of each level. */
    private static final String TURNS = "ambient,sitting,rate\nroom,1,50.2\nroom,1,50.9\nchilled,2,53.1\nchilled,2,52.2\nroom,3,50.4\nroom,3,51.2\nchilled,4,52.9\nchilled,4,53.3\n"
            + "room,5,49.9\nroom,5,50.8\nchilled,6,52.6\nchilled,6,53.4\n";

    @ParameterizedTest
    @ValueSource(strings = {"plain", "bom", "crlf", "semicolon and decimal comma", "tab", "quoted", "utf-16", "latin-1"})
    void theSameTableInAnyDressGivesTheSameAnswer(String dress) throws IOException {
        double expected = verdict(TURNS, ExitStatus.DONE, "--better", "higher", "--session", "sitting").get("logEffect").asDouble();
        byte[] dressed = switch (dress) {
            case "bom" -> ("\uFEFF" + TURNS).getBytes(StandardCharsets.UTF_8);
            case "crlf" -> TURNS.replace("\n", "\r\n").getBytes(StandardCharsets.UTF_8);
            case "semicolon and decimal comma" -> TURNS.replace(',', ';').replace('.', ',').getBytes(StandardCharsets.UTF_8);
            case "tab" -> TURNS.replace(',', '\t').getBytes(StandardCharsets.UTF_8);
            case "quoted" -> TURNS.replaceAll("([^,\n]+)", "\"$1\"").getBytes(StandardCharsets.UTF_8);
            case "utf-16" -> TURNS.getBytes(StandardCharsets.UTF_16);
            case "latin-1" -> ("n\u00f6te," + TURNS).replaceAll("\n(?=.)", "\nk\u00fchl,").getBytes(Charset.forName("ISO-8859-1"));
            default -> TURNS.getBytes(StandardCharsets.UTF_8);
        };
        assertEquals(expected, verdict(dressed, ExitStatus.DONE, "--better", "higher", "--session", "sitting").get("logEffect").asDouble(), 0);
    }

    @Test
    void aLowerIsBetterMetricIsReportedAsASpeedGainBesideItsOwnChange() throws IOException {
        JsonNode rate = verdict(TURNS, ExitStatus.DONE, "--better", "higher", "--session", "sitting");
        JsonNode time = verdict(TURNS, ExitStatus.FAIL, "--better", "lower", "--session", "sitting");
        assertEquals(-rate.get("logEffect").asDouble(), time.get("logEffect").asDouble(), 1e-15);
        assertEquals(rate.get("effectPercent").asDouble(), time.get("metricChangePercent").asDouble(), 1e-12);
    }

    @Test
    void theLevelOfAnIntervalIsToldInFullAndApartFromIt() throws IOException {
        Path file = Files.writeString(folder.resolve("few.csv"), "fan,rate\na,50.1\nb,51.2\na,50.3\nb,51.9\n");
        Call call = Call.of("verdict", "--trials", file.toString(), "--metric", "rate", "--better", "higher", "--factor", "fan", "--baseline", "a", "--false-alarm",
                "0,05 %");
        assertTrue(call.out().contains("  99.95 % interval ") && call.out().contains("  99.9 % interval "), call.out());
    }

    @Test
    void aChangeWithoutNoiseIsToldThoughItIsNotJudged() throws IOException {
        JsonNode still = verdict("ambient,rate\nroom,50\nchilled,51\nroom,50\nchilled,51\n", ExitStatus.UNDECIDED, "--better", "lower");
        assertEquals(100 * (50.0 / 51 - 1), still.get("effectPercent").asDouble(), 1e-9);
        assertEquals(2, still.get("metricChangePercent").asDouble(), 1e-9);
        assertTrue(still.get("components").get("runCv").isNull(), still.toString());
        JsonNode mixed = verdict("ambient,rate,day\nroom,50,1\nchilled,51,2\nroom,50.5,1\nchilled,51.1,2\n", ExitStatus.UNDECIDED, "--better", "higher",
                "--session", "day", "--change", "trial");
        assertTrue(mixed.get("effectPercent").isNull(), "the change lies together with the day");
    }

    @Test
    void aVerdictOnADamagedJournalSaysSo() throws IOException {
        String study = folder.resolve("study").toString();
        Call.of("demo", study);
        Path journal = folder.resolve("study").resolve("journal.jsonl");
        String whole = Files.readString(journal);
        assertEquals("[]", deviations(study).toString());
        int trial = whole.indexOf("\"kind\":\"trial\"");
        int score = whole.indexOf("\"score\":", trial) + 8;
        Files.writeString(journal, whole.substring(0, score) + "9" + whole.substring(score + 1));
        JsonNode damaged = deviations(study);
        assertTrue(damaged.get(0).asString().matches("the journal is damaged, line \\d+: the checksum does not fit.*one entry cannot be read.*"), damaged.toString());
        Call.of("journal", "repair", "--study", study);
        assertTrue(deviations(study).toString().contains("1 entry could not be read when the journal was repaired"), deviations(study).toString());
    }

    private static JsonNode deviations(String study) {
        return new JsonMapper().readTree(Call.of("verdict", "--json", "--study", study).out()).get("deviations");
    }

    /** Invented: three levels, the last far better; the rows as run, and upside down. */
    @Test
    void theOrderOfTheRowsChangesNothing() throws IOException {
        List<String> rows = new ArrayList<>();
        for (int i = 0; i < 18; i++) {
            String level = new String[] {"room", "chilled", "frozen"}[i % 3];
            rows.add(i + "," + level + "," + (50 + i % 3 * (i % 3) + 0.1 * (i * 7 % 5)));
        }
        for (String[] against : new String[][] {{}, {"--against", "frozen"}}) {
            List<String> answers = new ArrayList<>();
            for (int turn = 0; turn < 2; turn++) {
                Path file = Files.writeString(folder.resolve("rows.csv"), "place,ambient,rate\n" + String.join("\n", rows) + "\n");
                String[] fixed = {"verdict", "--json", "--trials", file.toString(), "--metric", "rate", "--better", "higher", "--factor", "ambient", "--baseline", "room",
                    "--order", "place"};
                JsonNode json = new JsonMapper().readTree(Call.of(Stream.of(fixed, against).flatMap(Stream::of).toArray(String[]::new)).out());
                answers.add(String.format(java.util.Locale.ROOT, "%s %.9f %s", json.get("verdict").asString(), json.get("effectPercent").asDouble(), json.get("checks")));
                Collections.reverse(rows);
            }
            assertEquals(answers.get(0), answers.get(1));
        }
    }
}
