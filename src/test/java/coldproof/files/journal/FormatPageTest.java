package coldproof.files.journal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.study.EventKind;
import coldproof.study.StudyState;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** The page for readers in fifty years says what the program does. */
class FormatPageTest {
    private static String page() throws IOException {
        try (InputStream in = FormatPageTest.class.getResourceAsStream("/coldproof/journal-format.md")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    private static String example() throws IOException {
        String page = page();
        int from = page.indexOf("{\"n\":1,", page.indexOf("## A worked example"));
        return page.substring(from, page.indexOf("```", from));
    }

    @Test
    void itsExampleIsAJournal() throws IOException {
        Reading reading = JournalReader.of("example", example().getBytes(StandardCharsets.UTF_8), Optional.empty());
        assertTrue(reading.isSound(), () -> reading.damages().toString());
        assertEquals(65.2, StudyState.fold(reading.entries()).trialAt(1).orElseThrow().score());
    }

    @Test
    void itsExampleIsWhatWouldBeWritten() throws IOException {
        Reading reading = JournalReader.of("example", example().getBytes(StandardCharsets.UTF_8), Optional.empty());
        StringBuilder written = new StringBuilder();
        long sum = Sum.NONE;
        for (Line line : reading.lines()) {
            written.append(new String(Line.encode(line.entry(), sum), StandardCharsets.UTF_8));
            sum = line.sum();
        }
        assertEquals(example(), written.toString());
    }

    @Test
    void itNamesEveryKind() throws IOException {
        String page = page();
        for (EventKind kind : EventKind.values()) {
            assertTrue(kind == EventKind.UNKNOWN || page.contains("`" + kind.word() + "`"), kind::word);
        }
    }
}
