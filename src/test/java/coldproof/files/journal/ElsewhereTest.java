package coldproof.files.journal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.quantity.Refused;
import coldproof.study.Entry;
import coldproof.study.EventKind;
import coldproof.study.Merging;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A journal on a medium that cannot be written goes on in a file on another. */
class ElsewhereTest {
    private static final Path HERE = Path.of("/here/journal.jsonl");
    private static final Path ELSEWHERE = Path.of("/spare/more.jsonl");
    private final FakeClock clock = new FakeClock();
    private final FakeDisk disk = new FakeDisk();
    private byte[] before;

    @BeforeEach
    void record() throws IOException {
        disk.createFolder(HERE.getParent());
        disk.createFolder(ELSEWHERE.getParent());
        try (Journal journal = Journal.open(disk, HERE, clock.journalClock())) {
            journal.append(EveryKind.trial(1, 48));
        }
        before = disk.read(HERE);
    }

    private Journal goOn() {
        return Journal.openElsewhere(disk, JournalReader.read(disk, HERE), ELSEWHERE, clock.journalClock());
    }

    @Test
    void itGoesOnWithTheNextNumberAndLeavesTheMediumAlone() throws IOException {
        try (Journal journal = goOn()) {
            assertEquals(3, journal.append(EveryKind.trial(2, 49)).sequence());
            assertEquals(3, journal.entries().size());
        }
        assertArrayEquals(before, disk.read(HERE));
        Reading more = JournalReader.read(disk, ELSEWHERE);
        assertTrue(more.continues(JournalReader.read(disk, HERE)));
        assertEquals(1, more.entries().size(), "no second beginning");
    }

    @Test
    void itGoesOnThereAnotherDay() {
        try (Journal journal = goOn()) {
            journal.append(EveryKind.trial(2, 49));
        }
        try (Journal journal = goOn()) {
            assertEquals(4, journal.append(EveryKind.trial(3, 50)).sequence());
            assertEquals(4, journal.entries().size());
        }
        List<Entry> merged = Merging.merge(JournalReader.read(disk, HERE).entries(), JournalReader.read(disk, ELSEWHERE).entries()).entries();
        assertEquals(List.of(1L, 2L, 3L, 4L), merged.stream().map(Entry::sequence).toList());
    }

    @Test
    void aTornLastLineThereIsSetAsideToo() throws IOException {
        try (Journal journal = goOn()) {
            journal.append(EveryKind.trial(2, 49));
            journal.append(EveryKind.trial(3, 50));
        }
        byte[] whole = disk.read(ELSEWHERE);
        disk.overwrite(ELSEWHERE, Arrays.copyOf(whole, whole.length - 9));
        try (Journal journal = goOn()) {
            assertEquals(EventKind.JOURNAL_MENDED, journal.entries().get(3).event().kind());
        }
    }

    @Test
    void anotherFileIsNotWrittenInto() throws IOException {
        Path other = Path.of("/spare/other.jsonl");
        try (Journal journal = Journal.open(disk, other, clock.journalClock())) {
            journal.append(EveryKind.trial(1, 48));
        }
        byte[] content = disk.read(other);
        Reading base = JournalReader.read(disk, HERE);
        Refused refused = assertThrows(Refused.class, () -> Journal.openElsewhere(disk, base, other, clock.journalClock()));
        assertEquals("this file does not go on from the study's journal", refused.problems().get(0).what());
        assertArrayEquals(content, disk.read(other));
        disk.overwrite(other, "shopping list\n".getBytes(StandardCharsets.US_ASCII));
        assertThrows(Refused.class, () -> Journal.openElsewhere(disk, base, other, clock.journalClock()));
        assertEquals(0, disk.openFiles());
    }
}
