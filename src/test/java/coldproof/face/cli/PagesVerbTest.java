package coldproof.face.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import org.junit.jupiter.api.Test;

class PagesVerbTest {
    @Test
    void theManualKnowsEveryVerbAndOptionAndNoLineIsTakenForARequest() {
        String manual = Call.of("pages", "manual").out();
        for (VerbEntry entry : Verbs.all()) {
            assertTrue(manual.contains(".SH \"" + entry.name().toUpperCase(Locale.ROOT) + "\""), entry.name());
        }
        assertTrue(manual.contains("(default: 3 %)") && manual.contains("\\-\\-session\\-noise"), manual);
        assertTrue(manual.lines().filter(line -> line.startsWith(".")).allMatch(line -> line.matches("\\.(TH|SH|TP|PP)( .*)?")), manual);
    }

    @Test
    void theCompletionNamesEveryVerb() {
        String script = Call.of("pages", "completion").out();
        for (VerbEntry entry : Verbs.all()) {
            assertTrue(script.contains(entry.name()), entry.name());
        }
    }

    @Test
    void noHelpMakesTheParserComplain() {
        PrintStream before = System.err;
        ByteArrayOutputStream said = new ByteArrayOutputStream();
        System.setErr(new PrintStream(said, true, StandardCharsets.UTF_8));
        try {
            for (VerbEntry entry : Verbs.all()) {
                Call help = Call.of(entry.name(), "--help");
                assertEquals(ExitStatus.DONE, help.status());
                assertTrue(help.out().contains("Example:\n  " + entry.example()), help.out());
                assertTrue(help.out().lines().allMatch(line -> line.length() <= 80 || line.contains(entry.example())), help.out());
            }
        } finally {
            System.setErr(before);
        }
        assertFalse(said.toString(StandardCharsets.UTF_8).contains("WARN"), said.toString(StandardCharsets.UTF_8));
    }
}
