package coldproof.face.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** One clear message with its place, status 2, nothing lost and no stack trace. */
class WrongInputTest {
    @TempDir
    Path folder;

    private static Call refused(Call call, String... parts) {
        assertEquals(ExitStatus.WRONG_INPUT, call.status(), call.out() + call.err());
        for (String part : parts) {
            assertTrue(call.err().contains(part), "missing \"" + part + "\" in: " + call.err());
        }
        assertFalse(call.err().contains("\tat ") || call.err().contains("Exception"), call.err());
        return call;
    }

    private Call verdict(String table, String... more) throws IOException {
        Path file = folder.resolve("trials.csv");
        Files.writeString(file, table);
        String[] fixed = {"verdict", "--trials", file.toString(), "--better", "higher", "--factor", "fan", "--baseline", "auto", "--against", "maximum"};
        String[] words = new String[fixed.length + more.length];
        System.arraycopy(fixed, 0, words, 0, fixed.length);
        System.arraycopy(more, 0, words, fixed.length, more.length);
        return Call.of(words);
    }

    @Test
    void aScoreThatIsNoNumberIsShownWhereItStands() throws IOException {
        refused(verdict("fan,rate\nauto,50.1\nmaximum,abc\n", "--metric", "rate"), "trials.csv:3:9", "abc", "Expected a number");
    }

    /** 0.9 is read as 0.9 %: a chance below that of a false alarm is met by the smallest plan there is. */
    @Test
    void aPowerBelowTheFalseAlarmIsNone() {
        refused(Call.of("runs", "--layout", "sessions", "--noise", "1.5%", "--power", "0.9"), "0.9 % is no more than the false alarm of 5 %");
    }

    @Test
    void optionsOfAQuestionDoNotPassUnheardBesideAPlan() {
        assertEquals(ExitStatus.DONE, Call.of("plan", "new", "--from", "chilled-air", "--study", folder.toString()).status());
        refused(Call.of("runs", "--study", folder.toString(), "--power", "80%"), "--power", "as its plan says");
        assertEquals(ExitStatus.DONE, Call.of("runs", "--study", folder.toString()).status());
    }

    @Test
    void aMissingColumnNamesTheNearest() throws IOException {
        refused(verdict("fan,rate\nauto,50.1\n", "--metric", "rat"), "no column \"rat\"", "Nearest: rate");
    }

    @Test
    void aScoreOfZeroHasNoRatio() throws IOException {
        refused(verdict("fan,rate\nauto,50.1\nmaximum,0\n", "--metric", "rate"), "trials.csv:3");
    }

    @Test
    void aTableThatIsNotThere() {
        refused(Call.of("verdict", "--trials", folder.resolve("none.csv").toString(), "--metric", "a", "--better", "higher", "--factor", "f", "--baseline", "x",
                "--against", "y"), "none.csv");
    }

    @Test
    void aPlanWithAWrongKeySaysWhereAndTheNearest() throws IOException {
        Files.writeString(folder.resolve("plan.yaml"), "coldproof: 1\nmetrik: {name: rate}\n");
        refused(Call.of("plan", "check", "--study", folder.toString()), "plan.yaml:2:1", "metrik", "Nearest: metric");
    }

    @Test
    void aFolderThatCannotBeMadeIsSaidPlainly() throws IOException {
        Path file = Files.writeString(folder.resolve("file"), "");
        refused(Call.of("plan", "new", "--from", "chilled-air", "--study", file.resolve("study").toString()), "the plan cannot be written");
    }

    @Test
    void recordBeforeThePlanIsFrozen() {
        Call.of("plan", "new", "--from", "background-load", "--study", folder.toString());
        refused(Call.of("record", "--study", folder.toString(), "--", "true"), "not frozen", "coldproof plan freeze");
    }

    @Test
    void aVerbThatNeedsAStepSaysWhich() {
        refused(Call.of("plan"), "new|check|show|freeze");
        refused(Call.of("journal"), "STEP", "coldproof journal --help");
        assertEquals(ExitStatus.DONE, Call.of("plan", "--help").status());
    }

    @Test
    void anOptionOfTablesIsNotPassedOverWhereAStudyIsJudged() {
        String study = folder.resolve("demo").toString();
        assertEquals(ExitStatus.DONE, Call.of("demo", "--study", study).status());
        assertTrue(Files.exists(folder.resolve("demo").resolve("report.html")));
        refused(Call.of("verdict", "--study", study, "--claim", "same"), "--claim", "--trials");
        refused(Call.of("verdict", "--study", study, "--metric", "rate"), "--metric", "--trials");
        refused(Call.of("limiter", "--study", study, "--factor", "fan"), "--factor", "--trials");
        refused(Call.of("noise", "--study", study, "--session", "day"), "--session", "--trials");
        assertEquals(ExitStatus.DONE, Call.of("verdict", "--study", study).status());
    }

    @Test
    void aMistakeInEveryRowIsNotToldOfEveryRow() throws IOException {
        Call call = refused(verdict("fan,rate\n" + "auto,x\nmaximum,y\n".repeat(500), "--metric", "rate", "--json"), "trials.csv:21:", "And 980 more");
        assertFalse(call.err().contains("trials.csv:22:"), "twenty will do");
        assertEquals(1000, new JsonMapper().readTree(call.out()).get("problems").size());
    }

    @Test
    void aLevelWrittenInTwoWaysIsNotLeftOut() throws IOException {
        refused(verdict("fan,rate\nauto,50.1\nmaximum,51\nAuto,50\nmaximum,51.5\n", "--metric", "rate"), "trials.csv:4:1", "\"Auto\" differs from \"auto\" in spelling alone");
        assertEquals(ExitStatus.UNDECIDED, verdict("fan,rate\nauto,50.1\nmaximum,51\nauto,50\nmaximum,52\n-1,50\n1,50\n1.1,50\n1.10,50\n", "--metric", "rate").status());
        Path numbers = Files.writeString(folder.resolve("numbers.csv"), "sticks,rate\n1,50\n2,51\n1.0,50.3\n2,52\n10,49\n100,48\n");
        refused(Call.of("verdict", "--trials", numbers.toString(), "--metric", "rate", "--better", "higher", "--factor", "sticks", "--baseline", "1", "--against", "2"),
                "numbers.csv:4:1", "\"1.0\" differs from \"1\"");
    }

    @Test
    void noWordIsPassedOver() {
        refused(Call.of("trace", "a.csv", "b.csv"), "\"b.csv\" is one word too many");
        refused(Call.of("plan", "check", "now"), "\"now\" is one word too many");
        refused(Call.of("journal", "check", "a", "b"), "\"b\" is one word too many");
        refused(Call.of("runs", "--layout", "paired", "--noise", "1", "%"), "\"%\" is one word too many");
        refused(Call.of("noise", "study", "--trials", "a.csv", "--metric", "rate"), "both studies and tables");
        String study = folder.resolve("ready").toString();
        refused(Call.of("plan", "new", "--from", "chilled-air", "--matters", "5%", "--study", study), "--matters", "--from takes a whole plan");
        refused(Call.of("plan", "new", "--factor", "fan", "--baseline", "a", "--against", "b", "--metric", "m", "--session-noise", "1%", "--study", study), "--noise: it is missing");
        assertFalse(Files.exists(folder.resolve("ready")), "nothing was written");
    }

    @Test
    void aTableOfAHeadingOnlySaysSo() throws IOException {
        refused(verdict("fan,rate\n", "--metric", "rate"), "trials.csv: there is no row below the heading");
    }

    @Test
    void aNumberOutOfRangeIsToldAsItWasWritten() {
        Call call = refused(Call.of("runs", "--layout", "paired", "--noise", "-1%"), "-1 % is out of range", "0 % or more and below 500 %");
        assertFalse(call.err().contains("E-"), call.err());
        refused(Call.of("limiter", "--trials", "none.csv", "--factor", "fan", "--power-limit", "-5W"), "--power-limit", "not above 0");
    }

    @Test
    void aPlaceOfUnknownColumnHasNoneInJson() throws IOException {
        Call call = refused(verdict("fan,rate\nauto,50.1\n\"maximum,51\n", "--metric", "rate", "--json"), "never closed");
        JsonNode problem = new JsonMapper().readTree(call.out()).get("problems").get(0);
        assertEquals(3, problem.get("line").asInt(), call.out());
        assertFalse(problem.has("column"), call.out());
    }

    @Test
    void aChargeAboveFullIsNoCharge() throws IOException {
        String study = folder.resolve("charged").toString();
        Call.of("plan", "new", "--from", "chilled-air", "--study", study);
        Path plan = folder.resolve("charged").resolve("plan.yaml");
        Files.writeString(plan, Files.readString(plan).replace("battery at least: 40 %", "battery at least: 140 %"));
        refused(Call.of("plan", "check", "--study", study), "`battery at least` is 140", "from 0 % to 100 %");
    }

    @Test
    void aNoteWithoutWordsAndAFolderWithoutJournal() {
        String study = folder.resolve("silent").toString();
        Call.of("plan", "new", "--from", "background-load", "--study", study);
        refused(Call.of("journal", "check", "--study", study), "journal.jsonl: there is no journal");
        Call.of("plan", "freeze", "--study", study);
        refused(Call.of("log", "--study", study, "--note", ""), "--note", "it says nothing");
    }

    @Test
    void anUnknownVerbAndAnUnknownOptionNameTheNearest() {
        refused(Call.of("verdct"), "verdct", "Nearest: verdict");
        refused(Call.of("runs", "--nois", "1%"), "--nois", "Nearest: --noise");
    }

    @Test
    void withJsonTheProblemIsOnStandardOutputToo() throws IOException {
        Call call = refused(verdict("fan,rate\nauto,50.1\nmaximum,abc\n", "--metric", "rate", "--json"), "abc");
        JsonNode problem = new JsonMapper().readTree(call.out()).get("problems").get(0);
        assertEquals(3, problem.get("line").asInt(), call.out());
    }
}
