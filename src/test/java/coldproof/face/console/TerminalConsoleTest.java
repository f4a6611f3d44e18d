package coldproof.face.console;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.job.StudyView;
import coldproof.job.TestBench;
import java.nio.file.Path;
import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Keys in, screen out. */
class TerminalConsoleTest {
    @TempDir
    Path folder;

    private static void assertFits(PumpedTerminal terminal, int columns) {
        terminal.text().lines().forEach(line -> assertTrue(line.length() <= columns, line));
    }

    @Test
    void opensOnTheStudyAndEnterDoesWhatComesNext() throws Exception {
        TestBench bench = new TestBench(folder, TestBench.FAN_PLAN);
        try (PumpedTerminal terminal = new PumpedTerminal(24, 80, folder, bench.machine())) {
            terminal.await("Is the fan at maximum worth its noise?").await("Enter alone does it (log)").await("coldproof>");
            terminal.type("\r").await("TRIAL 1 of 8").await("Enter to begin the session>");
            terminal.type("\r").await("build time, s>").type("92,4\r").await("TRIAL 2 of 8").await("Trial 1: 92.400 s. Recorded.");
            assertEquals(92.4, StudyView.read(folder).state().trialAt(1).orElseThrow().score());
            terminal.type("q").await("1 recorded, 7 to come; session 1 is open").await("coldproof>");
            terminal.type("quit\r");
            assertEquals(0, terminal.ended());
            assertTrue(terminal.echoes());
        }
    }

    @Test
    void controlCKeepsWhatIsTypedAndASecondOneLeaves() throws Exception {
        TestBench bench = new TestBench(folder, TestBench.FAN_PLAN);
        try (PumpedTerminal terminal = new PumpedTerminal(24, 80, folder, bench.machine())) {
            terminal.await("coldproof>").type("\r").await("Enter to begin").type("\r").await("build time, s>").type("91.").await("s> 91.");
            terminal.interrupt().await("Nothing is lost: every answer").await("s> 91.").type("5\r").await("Trial 1: 91.500 s. Recorded.");
            terminal.interrupt().await("Nothing is lost");
            Thread.sleep(500); // two presses, not one that arrives twice
            terminal.interrupt().await("coldproof>");
            assertEquals(91.5, StudyView.read(folder).state().trialAt(1).orElseThrow().score());
            terminal.type("status\r").await("1 recorded, 7 to come").await("coldproof>").type("quit\r").ended();
            assertTrue(terminal.echoes());
        }
    }

    @Test
    void narrowAndResizedScreensKeepProgressAndMetersInView() throws Exception {
        TestBench bench = new TestBench(folder, TestBench.WINTER_PLAN);
        try (PumpedTerminal terminal = new PumpedTerminal(24, 60, folder, bench.machine())) {
            terminal.await("coldproof>").type("log\r").await("TRIAL 1 of 8").await("session 1 of 4").await("outdoors 0 min of 3 h 00 min");
            assertFits(terminal, 60);
            terminal.resize(12, 40).await("TRIAL 1 of 8").await("outdoors 0 min");
            assertFits(terminal, 40);
            terminal.resize(50, 200).await("TRIAL 1 of 8").await("? help");
        }
    }

    @Test
    void theBellRingsWhenTheSoakIsOver() throws Exception {
        TestBench bench = new TestBench(folder, TestBench.WINTER_PLAN);
        try (PumpedTerminal terminal = new PumpedTerminal(24, 80, folder, bench.machine())) {
            terminal.await("coldproof>").type("log\r").await("air temperature").type("\r").await("Enter to begin").type("\r").await("SETTLING: 20:00 left");
            bench.pass(Duration.ofMinutes(12));
            terminal.await("SETTLING: 8:00 left");
            int before = terminal.bells();
            bench.pass(Duration.ofMinutes(8));
            terminal.await("SETTLED");
            bench.pass(Duration.ofSeconds(5));
            terminal.await("SETTLED for 0:05");
            assertEquals(before + 1, terminal.bells());
            terminal.type("\r").await("battery, %").type("80\rw").await("on wall power, planned battery").await("render rate, frames/s>");
        }
    }

    @Test
    void arrowKeysAndOtherSequencesAreNoCommands() throws Exception {
        TestBench bench = new TestBench(folder, TestBench.FAN_PLAN);
        try (PumpedTerminal terminal = new PumpedTerminal(24, 80, folder, bench.machine())) {
            terminal.await("coldproof>").type("log\r").await("Enter to begin").type("\r").await("build time, s>");
            terminal.type("\u001b[A\u001b[1;5D\u001bOP").type("9\u007f88\r").await("Trial 1: 88.000 s. Recorded.");
            assertTrue(StudyView.read(folder).state().skipped().isEmpty());
        }
    }

    @Test
    void aDumbTerminalTalksByLines() throws Exception {
        TestBench bench = new TestBench(folder, TestBench.FAN_PLAN);
        try (PumpedTerminal terminal = new PumpedTerminal("dumb", 24, 80, folder, bench.machine())) {
            terminal.await("coldproof>").type("log\r").await("Trial 1 of 8, session 1 of 1: fan").await("Enter to begin the session>").type("\r")
                    .await("build time, s>").type("92\r").await("Trial 2 of 8").type("q\r").await("1 recorded, 7 to come");
        }
    }

    @Test
    void tabCompletesVerbsOptionsWordsAndLevels() throws Exception {
        TestBench bench = new TestBench(folder, TestBench.FAN_PLAN);
        try (PumpedTerminal terminal = new PumpedTerminal(24, 80, folder, bench.machine())) {
            terminal.await("coldproof>").type("verd\t").await("coldproof> verdict").type("--adj\t").await("--adjust-for").type("\u0015");
            terminal.type("verdict --baseline max\t").await("--baseline maximum").type("\u0015");
            terminal.type("runs --layout pair\t").await("--layout paired").type("\u0015").type("quit\r");
            assertEquals(0, terminal.ended());
        }
    }
}
