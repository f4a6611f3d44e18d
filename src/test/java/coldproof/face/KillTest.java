package coldproof.face;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** A process killed with signal 9 while trials stream in has lost none that it had acknowledged, and recorded none twice. */
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "the workload is a program of other systems")
class KillTest {
    @TempDir
    private Path folder;

    private void kill(int times) throws IOException, InterruptedException {
        Path java = Path.of(System.getProperty("java.home"), "bin", "java");
        List<String> program = List.of(java.toString(), "-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC", "-cp", System.getProperty("java.class.path"),
                "coldproof.face.Main");
        KillHarness.Tally tally = new KillHarness(program, folder, 700, 20260114).run(times);
        assertTrue(tally.isClean(), tally::toString);
        assertEquals(times, tally.kills);
        assertTrue(tally.acknowledged > 0, () -> "too few trials to mean anything: " + tally);
    }

    @Test
    void aFewKillsLoseAndDoubleNothing() throws IOException, InterruptedException {
        kill(5);
    }

    @Test
    @Tag("long")
    void threeHundredKillsLoseAndDoubleNothing() throws IOException, InterruptedException {
        kill(300);
    }
}
