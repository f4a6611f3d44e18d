package coldproof.face.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** What {@code --adjust-for} and {@code --carry-noise} take, and what they answer to mistakes. */
class AdjustForTest {
    @TempDir
    Path folder;

    /** Invented: sixteen trials whose score falls with the air's warmth, which one cell does not tell. */
    private Path table(String badCell) throws IOException {
        SplittableRandom chance = new SplittableRandom(2);
        StringBuilder text = new StringBuilder("fan,place,air,day,rate\n");
        for (int i = 0; i < 16; i++) {
            double air = 20 + 5 * chance.nextDouble();
            String cell = i == 7 && !badCell.isEmpty() ? badCell : String.format(Locale.ROOT, "%.1f", air);
            text.append(i % 4 == 1 || i % 4 == 2 ? "maximum" : "auto").append(',').append(i).append(',').append(cell).append(",2026-01-").append(10 + i / 2).append(',')
                    .append(100 - air + (i % 4 == 1 || i % 4 == 2 ? 1 : 0) + 0.3 * chance.nextDouble()).append('\n');
        }
        return Files.writeString(folder.resolve("trials.csv"), text.toString());
    }

    private static Call call(Path table, String... more) {
        String[] fixed = {"verdict", "--json", "--trials", table.toString(), "--metric", "rate", "--better", "higher", "--factor", "fan", "--baseline", "auto",
            "--against", "maximum", "--order", "place"};
        String[] words = Arrays.copyOf(fixed, fixed.length + more.length);
        System.arraycopy(more, 0, words, fixed.length, more.length);
        return Call.of(words);
    }

    @Test
    void aCovariateTakesItsNoiseOut() throws IOException {
        Path table = table("");
        JsonNode plain = new JsonMapper().readTree(call(table).out());
        JsonNode adjusted = new JsonMapper().readTree(call(table, "--adjust-for", "air").out());
        assertTrue(adjusted.get("standardErrorLog").asDouble() < 0.2 * plain.get("standardErrorLog").asDouble(), adjusted.toString());
        assertEquals(13, adjusted.get("df").asDouble()); // one line costs one degree of freedom, however many values the air had
    }

    @Test
    void daysAreAFactorThoughTheyBeginWithDigits() throws IOException {
        JsonNode json = new JsonMapper().readTree(call(table(""), "--adjust-for", "day").out());
        assertEquals(16 - 1 - 7 - 1, json.get("df").asDouble());
    }

    @Test
    void aMissingCellOfACovariateIsNamed() throws IOException {
        Call call = call(table("?"), "--adjust-for", "air");
        assertEquals(ExitStatus.WRONG_INPUT, call.status());
        assertTrue(call.err().contains("trials.csv:9:"), call.err());
    }

    @Test
    void noiseFromATableWithoutRepeatsIsRefused() throws IOException {
        Path table = table("");
        Path pilot = Files.writeString(folder.resolve("pilot.csv"), "fan,rate\nauto,100\nmaximum,101\n");
        Call call = call(table, "--carry-noise", pilot.toString());
        assertEquals(ExitStatus.WRONG_INPUT, call.status());
        assertTrue(call.err().contains("no condition was repeated"), call.err());
    }

    @Test
    void carriedNoiseIsSaidInTheJson() throws IOException {
        Path table = table("");
        Path pilot = Files.writeString(folder.resolve("pilot.csv"), "fan,rate\nauto,100\nauto,101\nauto,99.5\nauto,100.5\nauto,102\n");
        JsonNode json = new JsonMapper().readTree(call(table, "--carry-noise", pilot.toString()).out());
        assertEquals(4, json.get("carriedIn").get("df").asDouble());
        assertEquals(18, json.get("df").asDouble());
        assertTrue(json.get("method").asString().contains("pilot.csv"), json.toString());
    }
}
