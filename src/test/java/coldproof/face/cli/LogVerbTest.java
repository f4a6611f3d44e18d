package coldproof.face.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The checklist by options, as scripts call it. */
class LogVerbTest {
    @TempDir
    Path folder;

    private JsonNode log(String... more) {
        String[] fixed = {"log", "--json", "--no-sensors", "--study", folder.toString()};
        String[] words = java.util.stream.Stream.of(fixed, more).flatMap(java.util.stream.Stream::of).toArray(String[]::new);
        Call call = Call.of(words);
        assertEquals(ExitStatus.DONE, call.status(), call.err());
        return new JsonMapper().readTree(call.out());
    }

    @Test
    void whatIsLeftOfASessionThatWasBrokenOffIsNotToCome() {
        Call.of("plan", "new", "--from", "fan-alternating", "--study", folder.toString());
        Call.of("plan", "freeze", "--study", folder.toString());
        assertEquals(23, log("--score", "99.1", "--soak", "15min").get("remaining").asInt());
        assertEquals(22, log("--skip", "the door was open").get("remaining").asInt());
        JsonNode ended = log("--abort", "the battery died");
        assertEquals(0, ended.get("remaining").asInt());
        assertEquals("finished", ended.get("next").get("asks").asString());
    }
}
