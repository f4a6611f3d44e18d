package coldproof.face.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** A study that was really recorded: 32 timed runs of one sum, alone and beside a busy neighbour. What R says of it stands in the folder's README. */
class RealStudyTest {
    @TempDir
    Path folder;

    private Path study() throws IOException {
        for (String file : new String[] {"plan.yaml", "journal.jsonl", "journal.head"}) {
            Files.copy(Path.of("src/test/resources/coldproof/studies/neighbour", file), folder.resolve(file));
        }
        return folder;
    }

    @Test
    void isJudgedAsAnotherProgramJudgesIt() throws IOException {
        Call call = Call.of("verdict", "--json", "--study", study().toString());
        assertEquals(ExitStatus.FAIL, call.status(), call.err());
        JsonNode json = new JsonMapper().readTree(call.out());
        assertEquals("loss", json.get("verdict").asString());
        assertEquals(-0.321032297705, json.get("logEffect").asDouble(), 1e-12);
        assertEquals(0.0357730364312, json.get("standardErrorLog").asDouble(), 1e-13);
        assertEquals(27, json.get("df").asDouble());
        assertEquals(1.37278745105e-09, json.get("p").asDouble(), 1e-19);
        assertEquals(100 * Math.expm1(-0.394432505522), json.get("interval").get("low").asDouble(), 1e-10);
        assertEquals(2.0 / 256, json.get("randomisation").get("p").asDouble(), 1e-15, "the most extreme of the 2 to the 8 orders of its blocks, and its mirror image");
        assertEquals(0, json.get("deviations").size(), json.toString());
    }

    @Test
    void itsJournalIsSound() throws IOException {
        assertEquals(ExitStatus.DONE, Call.of("journal", "check", "--study", study().toString()).status());
    }
}
