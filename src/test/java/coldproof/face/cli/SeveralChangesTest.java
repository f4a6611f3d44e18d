package coldproof.face.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.stats.DataTable;
import coldproof.stats.Tail;
import coldproof.stats.distribution.MultivariateT;
import coldproof.stats.multiple.Holm;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** {@code verdict} with several changed levels of one factor. */
class SeveralChangesTest {
    @TempDir
    Path folder;

    private Call call(String table, String... more) throws IOException {
        Path file = folder.resolve("trials.csv");
        Files.writeString(file, table);
        List<String> words = new ArrayList<>(List.of("verdict", "--trials", file.toString(), "--metric", "score", "--better", "higher"));
        words.addAll(Arrays.asList(more));
        return Call.of(words.toArray(String[]::new));
    }

    private JsonNode json(String table, String... more) throws IOException {
        String[] words = Arrays.copyOf(more, more.length + 1);
        words[more.length] = "--json";
        return new JsonMapper().readTree(call(table, words).out());
    }

    private static String fourChanges() {
        StringBuilder table = new StringBuilder("part,score\n");
        DataTable.read("multiple/many-to-one-data.csv").rows().forEach(row -> table.append(row.get("level")).append(',').append(row.get("value")).append('\n'));
        return table.toString();
    }

    private static double expected(String quantity) {
        return DataTable.read("multiple/many-to-one-expected.csv").where("method", "dunnett_two_sided").where("quantity", quantity).number("value");
    }

    /** Expected values: see the head of many-to-one-expected.csv. */
    @Test
    void everyOtherLevelIsJudgedTogetherByDunnettWhenNoneIsNamed() throws IOException {
        Call call = call(fourChanges(), "--factor", "part", "--baseline", "baseline", "--json");
        assertEquals(ExitStatus.FAIL, call.status(), call.err());
        JsonNode json = new JsonMapper().readTree(call.out());
        assertEquals("fail", json.get("decision").asString());
        assertEquals("fan_max", json.get("against").asString());
        List<String> changes = List.of("chilled", "fan_max", "paste", "stand"); // by name, however the rows are sorted
        for (int i = 0; i < changes.size(); i++) {
            JsonNode one = json.get("comparisons").get(i);
            assertEquals(changes.get(i), one.get("against").asString());
            assertEquals(expected(changes.get(i) + ":p_adjusted"), one.get("adjustedP").asDouble(), 1e-9);
            assertEquals(expected(changes.get(i) + ":p_unadjusted"), one.get("p").asDouble(), 1e-12);
            assertEquals(expected(changes.get(i) + ":ci95_low_pct"), one.get("interval").get("low").asDouble(), 1e-7);
            assertEquals(expected(changes.get(i) + ":ci95_high_pct"), one.get("interval").get("high").asDouble(), 1e-7);
        }
    }

    @Test
    void oneChangeAloneIsJudgedWithoutTheOthers() throws IOException {
        JsonNode json = json(fourChanges(), "--factor", "part", "--baseline", "baseline", "--against", "paste");
        assertEquals(9, json.get("df").asDouble());
        assertFalse(json.has("comparisons"));
    }

    @Test
    void theTableOfChangesFitsAScreen() throws IOException {
        Call call = call(fourChanges(), "--factor", "part", "--baseline", "baseline");
        assertTrue(call.out().contains("chilled   +4.49 %  +2.54 %  +6.47 %    < 0.0001  GAIN"), call.out());
        assertTrue(call.out().lines().allMatch(line -> line.length() <= 80), call.out());
    }

    /** Invented: every sitting has each of three fan settings twice. */
    private static String sittings(int lost) {
        SplittableRandom random = new SplittableRandom(11);
        StringBuilder table = new StringBuilder("fan,sitting,score\n");
        List<String> rows = new ArrayList<>();
        for (int sitting = 1; sitting <= 4; sitting++) {
            for (String fan : List.of("auto", "low", "full", "low", "auto", "full")) {
                double rate = fan.equals("full") ? 103 : fan.equals("low") ? 101 : 100;
                rows.add(fan + "," + sitting + "," + (rate + sitting + random.nextDouble()));
            }
        }
        rows.subList(0, rows.size() - lost).forEach(row -> table.append(row).append('\n'));
        return table.toString();
    }

    @Test
    void settingsInsideSittingsShareTheirBaseline() throws IOException {
        JsonNode json = json(sittings(0), "--factor", "fan", "--baseline", "auto", "--session", "sitting");
        double half = Math.sqrt(0.5);
        MultivariateT balanced = MultivariateT.oneFactor(new double[] {half, half}, 18); // 24 trials, 4 sittings, 2 changes
        for (JsonNode one : json.get("comparisons")) {
            assertEquals(18, one.get("df").asDouble());
            assertEquals(balanced.anyBeyond(Math.abs(one.get("t").asDouble()), Tail.TWO), one.get("adjustedP").asDouble(), 1e-12);
        }
        assertEquals("Dunnett", json(sittings(1), "--factor", "fan", "--baseline", "auto", "--session", "sitting").get("comparisons").get(0).get("adjustment").asString());
    }

    @Test
    void sittingsOfUnequalSizeAreJudgedApartAndAdjustedByHolm() throws IOException {
        SplittableRandom random = new SplittableRandom(12);
        StringBuilder table = new StringBuilder("ambient,sitting,score\n");
        String[] ambient = {"room", "cold", "dry", "cold", "room", "dry", "dry", "room", "cold"};
        for (int sitting = 0; sitting < ambient.length; sitting++) {
            for (int trial = 0; trial < 2 + sitting % 3; trial++) {
                table.append(ambient[sitting]).append(',').append(sitting + 1).append(',').append(100 + sitting % 2 + random.nextDouble()).append('\n');
            }
        }
        JsonNode all = json(table.toString(), "--factor", "ambient", "--baseline", "room", "--session", "sitting").get("comparisons");
        double[] adjusted = Holm.adjusted(all.get(0).get("p").asDouble(), all.get(1).get("p").asDouble());
        assertEquals("Holm, intervals by Bonferroni", all.get(0).get("adjustment").asString());
        assertEquals(adjusted[0], all.get(0).get("adjustedP").asDouble(), 1e-15);
        assertEquals(adjusted[1], all.get(1).get("adjustedP").asDouble(), 1e-15);
        assertEquals(0.95, all.get(0).get("interval").get("level").asDouble());
    }

    @Test
    void aBaselineIsNotComparedWithItself() throws IOException {
        assertEquals(ExitStatus.WRONG_INPUT, call(fourChanges(), "--factor", "part", "--baseline", "paste", "--against", "paste").status());
    }
}
