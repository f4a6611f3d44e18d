package coldproof.face.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.stats.DataTable;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The whole way from a table to a verdict, against textbooks and R: {@code src/test/r/verdicts.R} made the tables and the values. */
class VerdictAgainstOthersTest {
    private static final String TABLES = "/coldproof/verdict/";

    @TempDir
    static Path folder;

    private static Path table(String name) throws IOException {
        try (InputStream in = VerdictAgainstOthersTest.class.getResourceAsStream(TABLES + name)) {
            String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            Path file = folder.resolve(name);
            Files.writeString(file, text.substring(text.indexOf('\n') + 1)); // without the line that says where it is from
            return file;
        }
    }

    private static JsonNode verdict(String name, String options) throws IOException {
        List<String> words = new ArrayList<>(List.of("verdict", "--json", "--trials", table(name).toString()));
        words.addAll(Arrays.asList(options.split(" ")));
        if (!words.contains("--metric")) {
            words.addAll(List.of("--metric", "score", "--better", "higher"));
        }
        Call call = Call.of(words.toArray(String[]::new));
        assertTrue(call.err().isEmpty(), call.err());
        return new JsonMapper().readTree(call.out());
    }

    @TestFactory
    Stream<DynamicTest> agreesWithR() {
        return DataTable.read(TABLES + "expected.csv").rows().stream().map(row -> DynamicTest.dynamicTest(row.get("case"), () -> check(row)));
    }

    private static void check(Map<String, String> row) throws IOException {
        JsonNode json = verdict(row.get("file"), row.get("options"));
        // R's optimiser of the restricted likelihood stops about 1e-6 short; least squares agree to rounding
        double tolerance = json.get("method").asString().contains("REML") ? 2e-5 : 1e-9;
        close(row, "estimate", json.get("logEffect"), tolerance);
        close(row, "se", json.get("standardErrorLog"), tolerance);
        close(row, "df", json.get("df"), tolerance);
        close(row, "t", json.get("t"), tolerance);
        close(row, "p", json.get("p"), 5 * tolerance);
    }

    private static void close(Map<String, String> row, String column, JsonNode value, double relative) {
        double expected = Double.parseDouble(row.get(column));
        assertEquals(expected, value.asDouble(), relative * Math.abs(expected), row.get("case") + " " + column);
    }

    /** W. N. Venables, B. D. Ripley, Modern Applied Statistics with S, 4th ed. (2002), sec. 6.7: F 12.259 (0.00437), 0.544 (0.47490), 6.166 (0.02880) on 1 and 12. */
    @Test
    void thePeasOfTheTextbookHaveItsPrintedF() throws IOException {
        String[] factors = {"N", "P", "K"};
        double[] printedF = {12.259, 0.544, 6.166};
        double[] printedP = {0.00437, 0.47490, 0.02880};
        for (int i = 0; i < 3; i++) {
            JsonNode json = verdict("npk.csv", "--factor " + factors[i] + " --baseline 0 --against 1 --session block --change trial --adjust-for "
                    + factors[(i + 1) % 3] + " --adjust-for " + factors[(i + 2) % 3]);
            double t = json.get("t").asDouble();
            assertEquals(printedF[i], t * t, 0.0005);
            assertEquals(printedP[i], json.get("p").asDouble(), 0.000005);
            assertEquals(12, json.get("df").asDouble());
            assertEquals("within sessions", json.get("stratum").asString());
        }
    }

    /** U. Halekoh, S. Hojsgaard, Journal of Statistical Software 59(9) (2014): harvest F 15.21 on 1 and 2, p 0.060; by trials it would be far below 0.001. */
    @Test
    void theHarvestOfBeetsIsTestedAgainstWholePlots() throws IOException {
        JsonNode json = verdict("beets.csv", "--factor harvest --baseline harv1 --against harv2 --session plot --adjust-for sow --adjust-for block");
        assertEquals(15.21, Math.pow(json.get("t").asDouble(), 2), 0.005);
        assertEquals(0.060, json.get("p").asDouble(), 0.0005);
        assertEquals(2, json.get("df").asDouble());
        assertEquals("between sessions", json.get("stratum").asString());
    }

    /** The variances beside a verdict by the mixed model are that model's: R 4.2.2, lme4 1.1-31, {@code lmer(log(score) ~ ambient * fan + (1 | session))}. */
    @Test
    void noiseIsThatOfTheModelItWasJudgedBy() throws IOException {
        Path file = folder.resolve("split-plot-data.csv");
        try (InputStream in = DataTable.class.getResourceAsStream("model/split-plot-data.csv")) {
            Files.write(file, in.readAllBytes());
        }
        Call call = Call.of("verdict", "--json", "--trials", file.toString(), "--where", "experiment=unbal", "--metric", "score", "--better", "higher",
                "--factor", "ambient", "--baseline", "room", "--against", "chilled", "--session", "session", "--adjust-for", "fan");
        JsonNode json = new JsonMapper().readTree(call.out());
        assertTrue(json.get("method").asString().contains("REML"), json.toString());
        assertEquals(100 * Math.sqrt(Math.expm1(6.1714847775602119e-05)), json.get("components").get("sessionCv").asDouble(), 1e-7);
        assertEquals(100 * Math.sqrt(Math.expm1(0.00016259615686820607)), json.get("components").get("runCv").asDouble(), 1e-7);
    }
}
