package coldproof.face.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.job.PlanJob;
import coldproof.job.ReadyPlans;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** What {@code rehearse}, {@code runs --cheapest} and {@code noise --advise} answer to scripts and to people. */
class RehearseVerbTest {
    @TempDir
    Path study;

    @BeforeEach
    void plan() {
        PlanJob.create(study, ReadyPlans.text("chilled-air"));
    }

    private Call call(String... words) {
        String[] all = Arrays.copyOf(words, words.length + 2);
        all[words.length] = "--study";
        all[words.length + 1] = study.toString();
        return Call.of(all);
    }

    @Test
    void scriptsGetEveryStoryAndTheSameForTheSameSeed() {
        String first = call("rehearse", "--studies", "300", "--seed", "5", "--json").out();
        JsonNode json = new JsonMapper().readTree(first);
        assertEquals(300, json.get("studies").asInt());
        assertTrue(json.get("simulated").asBoolean());
        for (JsonNode story : json.get("stories")) {
            double sum = story.get("pass").asDouble() + story.get("fail").asDouble() + story.get("undecided").asDouble();
            assertEquals(1, sum, 1e-12, story.toString());
        }
        assertEquals(first, call("rehearse", "--studies", "300", "--seed", "5", "--json").out());
    }

    @Test
    void theScreenFitsEightyColumns() {
        for (Call call : new Call[] {call("rehearse", "--studies", "300"), call("runs", "--cheapest"), call("noise", "--advise")}) {
            assertEquals(ExitStatus.DONE, call.status(), call.err());
            call.out().lines().forEach(line -> assertTrue(line.codePointCount(0, line.length()) <= 80, line));
        }
    }

    @Test
    void limitsOfTheSearchAreKept() {
        JsonNode json = new JsonMapper().readTree(call("runs", "--cheapest", "--json", "--outdoors-at-most", "2 h").out());
        assertTrue(json.get("best").get("minutes").get("outdoors").asDouble() <= 120, json.toString());
        assertTrue(json.get("withoutLimit").has("outdoors-in-all"), json.toString());
        assertEquals(ExitStatus.WRONG_INPUT, call("runs", "--cheapest", "--outdoors-at-most", "0 h").status());
    }

    @Test
    void aBenchThatIsWrongIsNamedAtItsPlace() throws IOException {
        Files.writeString(study.resolve("bench.yaml"), "coldproof bench: 1\nname: mine\npower limt: 30 W\n");
        Call call = call("rehearse", "--studies", "10");
        assertEquals(ExitStatus.WRONG_INPUT, call.status());
        assertTrue(call.err().contains("bench.yaml:3:") && call.err().contains("power limit"), call.err());
    }
}
