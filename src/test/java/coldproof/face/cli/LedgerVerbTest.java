package coldproof.face.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

class LedgerVerbTest {
    private static final Path EXAMPLE = Path.of("plans/ledgers/trail-laptops.yaml");
    @TempDir
    Path folder;

    @Test
    void theExampleIsComparedAndSaidToBeSimulated() {
        Call call = Call.of("ledger", EXAMPLE.toString());
        assertEquals(ExitStatus.DONE, call.status(), call.err());
        assertTrue(call.out().contains("SIMULATED") && call.out().contains("cannot be told from trail laptop, unit 1"), call.out());
        assertTrue(call.out().lines().allMatch(line -> line.length() <= 80), call.out());
    }

    @Test
    void theJsonCarriesTheNumbersOfTheScreen() {
        Call call = Call.of("ledger", EXAMPLE.toString(), "--json", "--reference", "hut desktop");
        JsonNode json = JsonMapper.builder().build().readTree(call.out());
        assertEquals("hut desktop", json.get("reference").asString());
        JsonNode first = json.get("tables").get(0).get("devices").get(0);
        assertEquals("ridge desktop", first.get("device").asString());
        assertEquals(100 * (102.4 / 77.5 - 1), first.get("fasterPercent").asDouble(), 1e-9);
        assertEquals("not-stated", json.get("tables").get(0).get("devices").get(4).get("told").asString());
        assertEquals(2, json.get("constraints").size());
    }

    @Test
    void aStudyOfOnesOwnStandsBesidePublishedFigures() throws IOException {
        String study = folder.resolve("study").toString();
        Call.of("plan", "new", "--from", "fan-alternating", "--study", study);
        Call.of("plan", "freeze", "--study", study);
        Call.typing("\n15 min\n100\ny\n101\n100\n102\n101\n", "log", "--study", study);
        Path ledger = Files.writeString(folder.resolve("ledger.yaml"), "coldproof ledger: 1\ntitle: t\nreference: printed\nworkloads:\n  build: {unit: s, better: lower}\n"
                + "devices:\n  mine: {figures: {build: {study: study}}}\n  printed: {figures: {build: {value: 120, plus or minus: 1, source: a table}}}\n");
        Call call = Call.of("ledger", ledger.toString(), "--json");
        assertEquals(ExitStatus.DONE, call.status(), call.err());
        JsonNode mine = JsonMapper.builder().build().readTree(call.out()).get("tables").get(0).get("devices").get(0);
        assertEquals("mine", mine.get("device").asString());
        assertTrue(mine.get("own").asBoolean() && mine.get("fasterPercent").asDouble() > 15, mine.toString());
        assertFalse(call.err().contains("Recorded"), "the figure is of all trials and shows no change: " + call.err());
        Call both = Call.of("ledger", Files.writeString(folder.resolve("both.yaml"), Files.readString(ledger).replace("{study: study}}}\n",
                "{study: study, condition: {fan: auto}}}}\n  loud: {figures: {build: {study: study, condition: {fan: maximum}}}}\n")).toString());
        assertTrue(both.err().replaceAll("\\s+", " ").contains("Recorded as a deviation: the results were looked at after 5 of"), both.err());
        Call wrong = Call.of("ledger", Files.writeString(folder.resolve("wrong.yaml"), Files.readString(ledger).replace("unit: s,", "unit: h,")).toString());
        assertEquals(ExitStatus.WRONG_INPUT, wrong.status());
        assertTrue(wrong.err().contains("wrong.yaml:7") && wrong.err().contains("it measures build time in s"), wrong.err());
    }

    @Test
    void thePageSaysWhatTheScreenSays() throws IOException {
        Path page = folder.resolve("ledger.html");
        Call call = Call.of("ledger", EXAMPLE.toString(), "--out", page.toString());
        assertEquals(ExitStatus.DONE, call.status(), call.err());
        String html = Files.readString(page).replace('\u00a0', ' ').replace('\u202f', ' ');
        assertTrue(html.contains("hut desktop is 24.8 % faster than trail laptop, unit 1, which is 19.9 % slower than it."), html);
        assertTrue(call.out().contains("hut desktop is 24.8 % faster") && html.contains("SIMULATED") && html.contains("<svg"));
        assertFalse(html.contains("http://") && html.contains("<script"), "nothing is fetched and nothing runs");
    }

    @Test
    void aHostileNameIsHarmlessOnScreenAndPage() throws IOException {
        String text = Files.readString(EXAMPLE).replace("hut desktop:", "\"<script>alert(1)</script>\\e[2J\\u202e\":");
        Path page = folder.resolve("ledger.html");
        Call call = Call.of("ledger", Files.writeString(folder.resolve("hostile.yaml"), text).toString(), "--out", page.toString());
        assertEquals(ExitStatus.DONE, call.status(), call.err());
        String html = Files.readString(page);
        assertFalse(html.contains("<script>") || html.contains("\u001b") || html.contains("\u202e"), html);
        assertFalse(call.out().contains("\u001b") || call.out().contains("\u202e"), call.out());
    }

    @Test
    void noFileAndAMissingFileAreSaid() {
        assertEquals(ExitStatus.WRONG_INPUT, Call.of("ledger").status());
        assertTrue(Call.of("ledger", "none.yaml").err().contains("there is no such file"));
    }

    @Test
    void mutatedLedgersAreComparedOrRefused() throws IOException {
        String text = Files.readString(EXAMPLE);
        for (int seed = 0; seed < 150; seed++) {
            String mutant = new Mutation(new SplittableRandom(seed)).of(text);
            Call call = Call.of("ledger", Files.write(folder.resolve("mutant.yaml"), mutant.getBytes(StandardCharsets.UTF_8)).toString());
            String said = "mutant " + seed + ": " + call.status() + "\n" + mutant + call.err();
            assertTrue(call.status() == ExitStatus.DONE || call.status() == ExitStatus.WRONG_INPUT, said);
            assertFalse(call.err().contains("unforeseen") || (call.out() + call.err()).contains("\u001b"), said);
        }
    }
}
