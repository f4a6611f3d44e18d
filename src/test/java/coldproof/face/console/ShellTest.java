package coldproof.face.console;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.face.cli.CommandLineDesk;
import coldproof.face.dialogue.Lines;
import coldproof.job.StudyView;
import coldproof.job.TestBench;
import java.io.BufferedReader;
import java.io.PrintWriter;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The console without a terminal. */
class ShellTest {
    @TempDir
    Path folder;

    private record Said(int status, String text) {}

    private static Said piped(Path folder, int columns, String... lines) {
        StringWriter out = new StringWriter();
        BufferedReader in = new BufferedReader(new StringReader(lines.length == 0 ? "" : String.join("\n", lines) + "\n"));
        int status = Console.piped(new CommandLineDesk(false), coldproof.job.Machine.atHand(), folder, Lines.of(in, new PrintWriter(out), columns, false));
        return new Said(status, out.toString());
    }

    @Test
    void withoutAStudyItOffersDemoReadyPlanAndGuidedPlan() {
        Said said = piped(folder, 80);
        for (String offer : List.of("guided", "ready", "demo", "study DIR")) {
            assertTrue(said.text().contains("  " + offer), said.text());
        }
        assertEquals(0, said.status());
    }

    @Test
    void aReadyPlanIsCopiedCheckedAndFrozenByEnterAlone() {
        Said said = piped(folder, 80, "ready", "2", "my fans", "", "rehearse --help", "plan freeze", "quit");
        assertTrue(Files.exists(folder.resolve("my fans").resolve("plan.yaml")), said.text());
        assertTrue(StudyView.read(folder.resolve("my fans")).frozen(), said.text());
        assertTrue(said.text().contains("The plan is consistent: "), said.text());
    }

    @Test
    void theSameLinesGiveTheSameTrialsAsTheCommandLine() {
        TestBench bench = new TestBench(folder, TestBench.FAN_PLAN);
        assertFalse(bench.folder().toString().isEmpty());
        piped(folder, 80, "log", "", "92.4", "91", "p lunch", "verdict");
        assertEquals(List.of(92.4, 91.0), StudyView.read(folder).state().trials().stream().map(trial -> trial.score()).toList());
        assertTrue(StudyView.read(folder).state().paused());
    }

    @Test
    void anUnknownWordGetsTheNearest() {
        Said said = piped(folder, 80, "verdct");
        assertTrue(said.text().contains("Nearest: verdict"), said.text());
        assertEquals(2, said.status());
        assertTrue(piped(folder, 80, "statsu").text().contains("Nearest: status"));
    }

    @Test
    void helpNamesEveryVerbAndEachHasAnExample() {
        CommandLineDesk desk = new CommandLineDesk(false);
        Said help = piped(folder, 80, "help");
        desk.verbs().forEach(verb -> {
            assertTrue(help.text().contains("  " + verb.name() + " "), verb.name());
            assertTrue(piped(folder, 80, "help " + verb.name()).text().contains("Example:"), verb.name());
        });
    }

    @Test
    void quotesAndFoldersThatAreNotThereAreToldOff() {
        assertTrue(piped(folder, 80, "study \"my").text().contains("is not closed"));
        assertTrue(piped(folder, 80, "study nowhere").text().contains("there is no such folder"));
        assertTrue(piped(folder, 80, "study").text().contains("no folder is given"));
    }

    @Test
    void everyLineOfTheHomeTextFitsSixtyColumns() {
        new TestBench(folder, TestBench.WINTER_PLAN);
        String path = folder.toAbsolutePath().normalize().toString();
        piped(folder, 60).text().lines().filter(line -> !line.contains(path)).forEach(line -> assertTrue(line.length() <= 60, line));
    }

    @Test
    void wordsKeepQuotedSpacesAndBackslashes() {
        assertEquals(List.of("study", "C:\\my study", "it's"), Words.of("study \"C:\\my study\" it's"));
        assertEquals(List.of("", "a b"), Words.of("'' 'a b'"));
    }
}
