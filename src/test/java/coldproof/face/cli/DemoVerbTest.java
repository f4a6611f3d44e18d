package coldproof.face.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DemoVerbTest {
    @TempDir
    Path folder;

    @Test
    void goesFromPlanToVerdictAndSaysThatItIsSimulated() {
        Call call = Call.of("demo", folder.resolve("tarn hollow").toString());
        assertEquals(ExitStatus.DONE, call.status(), call.err());
        assertTrue(call.out().contains("SIMULATED") && call.out().contains("PASS"), call.out());
        assertTrue(call.out().lines().allMatch(line -> line.length() <= 80 || line.startsWith("Study ") || line.startsWith("Report ")), call.out());
    }

    @Test
    void writesTheSameBytesEveryTime() throws IOException {
        Call.of("demo", folder.resolve("one").toString());
        Call.of("demo", folder.resolve("two").toString());
        for (String file : new String[] {"plan.yaml", "journal.jsonl", "traces/trial-001.csv", "traces/trial-032.csv"}) {
            assertArrayEquals(Files.readAllBytes(folder.resolve("one").resolve(file)), Files.readAllBytes(folder.resolve("two").resolve(file)), file);
        }
    }

    @Test
    void closesEverySession() throws IOException {
        Call.of("demo", folder.resolve("one").toString());
        String journal = Files.readString(folder.resolve("one").resolve("journal.jsonl"));
        assertEquals(8, journal.split("\"kind\":\"session-closed\"", -1).length - 1, journal);
    }

    @Test
    void neverWritesIntoAFolderThatHoldsSomething() throws IOException {
        Files.writeString(folder.resolve("mine.txt"), "mine");
        Call call = Call.of("demo", folder.toString());
        assertEquals(ExitStatus.WRONG_INPUT, call.status());
        assertTrue(call.err().contains("there is something in this folder already"), call.err());
    }

    @Test
    void theStudyItMakesIsJudgedLikeAnyOther() {
        Path study = folder.resolve("study");
        Call.of("demo", study.toString());
        Call call = Call.of("verdict", "--json", "--study", study.toString());
        assertEquals(ExitStatus.DONE, call.status(), call.err());
        assertTrue(call.out().contains("\"decision\":\"pass\""), call.out());
        assertTrue(call.out().contains("\"simulated\":\"the workshop"), call.out());
    }
}
