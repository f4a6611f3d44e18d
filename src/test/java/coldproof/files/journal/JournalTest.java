package coldproof.files.journal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.study.Entry;
import coldproof.study.Event;
import coldproof.study.EventKind;
import coldproof.study.JournalBegun;
import coldproof.study.JournalMended;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class JournalTest {
    @TempDir
    private Path folder;
    private Path path;
    private final FakeClock clock = new FakeClock();

    @BeforeEach
    void name() {
        path = folder.resolve("journal.jsonl");
    }

    private Journal open() {
        return Journal.open(new SystemDisk(), path, clock.journalClock());
    }

    @Test
    void everyKindOfEventComesBackAsItWas() {
        List<Event> events = EveryKind.events();
        try (Journal journal = open()) {
            events.forEach(journal::append);
        }
        Reading reading = JournalReader.read(path);
        assertEquals(List.of(), reading.damages());
        assertEquals(events, reading.entries().stream().skip(1).map(Entry::event).toList());
    }

    @Test
    void theSampleHasEveryKind() {
        Set<EventKind> kinds = EnumSet.noneOf(EventKind.class);
        EveryKind.events().forEach(event -> kinds.add(event.kind()));
        assertEquals(EnumSet.allOf(EventKind.class), kinds);
    }

    @Test
    void aNewJournalBeginsWithItsFormatAndAMarkOfTheStudy() {
        try (Journal journal = open()) {
            assertEquals(new JournalBegun(1, "mark2"), journal.entries().get(0).event());
        }
    }

    @Test
    void theEnvelopeHoldsBothClocks() {
        try (Journal journal = open()) {
            clock.pass(Duration.ofMillis(90_250));
            Entry entry = journal.append(EveryKind.trial(1, 48));
            assertEquals(2, entry.sequence());
            assertEquals("2026-01-14T09:31:30.250+01:00", entry.at().toString());
            assertEquals(90.25, entry.monotonicSeconds());
            assertEquals("mark1", entry.process());
        }
    }

    @Test
    void aReopenedJournalGoesOnWhereItStopped() {
        try (Journal journal = open()) {
            journal.append(EveryKind.trial(1, 48));
        }
        try (Journal journal = open()) {
            assertEquals(3, journal.append(EveryKind.trial(2, 49)).sequence());
            assertEquals(List.of(), journal.problems());
        }
        Reading reading = JournalReader.read(path);
        assertTrue(reading.isSound());
        assertEquals(3, reading.entries().size());
    }

    @Test
    void aTornLastLineIsSetAsideAndReported() throws IOException {
        try (Journal journal = open()) {
            journal.append(EveryKind.trial(1, 48));
        }
        Files.writeString(path, "{\"n\":3,\"at\":\"2026-", StandardOpenOption.APPEND);
        Reading torn = JournalReader.read(path);
        assertEquals(List.of(3), torn.damagedLines());
        assertEquals(Damage.Kind.TORN_TAIL, torn.damages().get(0).kind());
        try (Journal journal = open()) {
            assertEquals(1, journal.problems().size());
            assertEquals(EventKind.JOURNAL_MENDED, journal.entries().get(2).event().kind());
            assertEquals("journal.jsonl.torn-3", ((JournalMended) journal.entries().get(2).event()).savedAs().orElseThrow());
        }
        assertEquals("{\"n\":3,\"at\":\"2026-", Files.readString(folder.resolve("journal.jsonl.torn-3")));
        assertTrue(JournalReader.read(path).isSound());
    }

    @Test
    void aFlippedByteIsFoundAndItsLineNamed() throws IOException {
        try (Journal journal = open()) {
            journal.append(EveryKind.trial(1, 48.3125));
            journal.append(EveryKind.trial(2, 49));
        }
        String text = Files.readString(path);
        Files.writeString(path, text.replace("48.3125", "49.3125"));
        Reading reading = JournalReader.read(path);
        assertEquals(List.of(2), reading.damagedLines());
        assertEquals(List.of(1L, 3L), reading.entries().stream().map(Entry::sequence).toList());
    }

    @Test
    void nothingInALineCanSteerATerminal() throws IOException {
        try (Journal journal = open()) {
            EveryKind.events().forEach(journal::append);
        }
        String text = new String(Files.readAllBytes(path), StandardCharsets.UTF_8);
        text.lines().forEach(line -> line.codePoints().forEach(c -> assertFalse(Character.isISOControl(c) || c == 0x202e, line)));
        assertTrue(text.contains("🧊") && text.contains("café"), "what is harmless stays readable");
    }
}
