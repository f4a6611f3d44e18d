package coldproof.face.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A study that goes on from an earlier one. */
class FollowUpTest {
    @TempDir
    Path folder;

    private String study(String scores) {
        String study = folder.resolve("first").toString();
        Call.of("plan", "new", "--from", "fan-alternating", "--study", study);
        Call.of("plan", "freeze", "--study", study);
        Call.typing("\n15 min\n" + scores, "log", "--study", study);
        return study;
    }

    @Test
    void itStartsFromTheEarlierPlanWithTheNoiseMeasured() throws IOException {
        String first = study("100\ny\n101\n100\n102\n101\n99\n");
        String second = folder.resolve("second").toString();
        assertEquals(ExitStatus.DONE, Call.of("plan", "new", "--follow", first, "--study", second).status());
        String plan = Files.readString(folder.resolve("second/plan.yaml"));
        assertTrue(plan.contains("from: first") && plan.contains("run degrees of freedom: ") && plan.contains("seed: 419"), plan);
        assertEquals(ExitStatus.DONE, Call.of("plan", "check", "--study", second).status());
        assertNotEquals(Call.of("schedule", "--study", first).out(), Call.of("schedule", "--study", second).out(), "a run order of its own");
    }

    @Test
    void aStudyWithoutRepeatsHasNoNoiseToGive() {
        String first = study("100\ny\n");
        Call call = Call.of("plan", "new", "--follow", first, "--study", folder.resolve("second").toString());
        assertEquals(ExitStatus.WRONG_INPUT, call.status());
        assertTrue(call.err().contains("no condition was repeated"), call.err());
    }

    /** 21.6 % noise and a change of 2 % that matters take thousands of trials: more orders than a double holds. */
    @Test
    void aHopelesslyNoisyStudyIsSizedAllTheSame() throws IOException {
        String first = study("100\ny\n160\ny\n80\ny\n100\ny\n170\ny\n70\ny\n");
        String second = folder.resolve("second").toString();
        Call.of("plan", "new", "--follow", first, "--study", second);
        Call call = Call.of("plan", "check", "--study", second);
        assertEquals(ExitStatus.DONE, call.status(), call.err());
    }
}
