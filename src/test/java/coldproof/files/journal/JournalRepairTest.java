package coldproof.files.journal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.quantity.Refused;
import coldproof.study.Entry;
import coldproof.study.EventKind;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A damaged journal becomes a sound one, whatever the damage; nothing that could be read changes, and nothing is deleted. */
class JournalRepairTest {
    private static final Path FOLDER = Path.of("/study");
    private static final Path PATH = FOLDER.resolve("journal.jsonl");
    private final FakeClock clock = new FakeClock();
    private final FakeDisk disk = new FakeDisk();
    private List<Entry> written;
    private byte[] whole;

    @BeforeEach
    void record() throws IOException {
        disk.createFolder(FOLDER);
        try (Journal journal = Journal.open(disk, PATH, clock.journalClock())) {
            EveryKind.events().forEach(journal::append);
            written = journal.entries();
        }
        whole = disk.read(PATH);
    }

    private List<String> lines() {
        return new ArrayList<>(new String(whole, StandardCharsets.UTF_8).lines().toList());
    }

    private void damage(List<String> lines) {
        disk.overwrite(PATH, (String.join("\n", lines) + "\n").getBytes(StandardCharsets.UTF_8));
    }

    private JournalRepair.Repaired repaired() {
        Reading before = JournalReader.read(disk, PATH);
        JournalRepair.Repaired repaired = JournalRepair.repair(disk, PATH, clock.journalClock()).orElseThrow();
        Reading after = JournalReader.read(disk, PATH);
        assertEquals(List.of(), after.damages());
        assertTrue(after.entries().containsAll(before.entries()), "what could be read is there, under its number");
        assertArrayEquals(before.bytes(), bytes(FOLDER.resolve(repaired.keptAs())), "the damaged file is kept as it was");
        assertEquals(EventKind.JOURNAL_MENDED, after.entries().get(after.entries().size() - 1).event().kind());
        return repaired;
    }

    private byte[] bytes(Path path) {
        try {
            return disk.read(path);
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    @Test
    void aSoundJournalIsLeftAlone() {
        assertEquals(Optional.empty(), JournalRepair.repair(disk, PATH, clock.journalClock()));
        assertArrayEquals(whole, bytes(PATH));
    }

    @Test
    void aFlippedByteLeavesItsNumberToAnEntryThatSaysSo() {
        List<String> lines = lines();
        lines.set(4, lines.get(4).replace("matters", "mattens"));
        damage(lines);
        assertEquals(1, repaired().entriesLost());
        Entry stands = JournalReader.read(disk, PATH).entries().get(4);
        assertEquals(5, stands.sequence());
        assertEquals(EventKind.JOURNAL_MENDED, stands.event().kind());
        assertTrue(Arrays.equals(Arrays.copyOf(whole, 200), Arrays.copyOf(bytes(PATH), 200)), "lines before the damage stay byte for byte");
    }

    @Test
    void missingDoubledAndShuffledLinesAreSetRight() {
        List<String> lines = lines();
        lines.remove(10);
        lines.remove(10);
        lines.add(3, lines.get(2));
        String moved = lines.remove(20);
        lines.add(6, moved);
        damage(lines);
        assertEquals(2, repaired().entriesLost());
        assertEquals(written.size() + 1, JournalReader.read(disk, PATH).entries().size());
    }

    @Test
    void anEndThatHadBeenAcknowledgedIsSaidToBeMissing() {
        damage(lines().subList(0, 12));
        assertEquals(written.size() - 12, repaired().entriesLost());
    }

    @Test
    void aLostFirstLineIsNoEndOfTheStudy() {
        List<String> lines = lines();
        lines.set(0, "x" + lines.get(0).substring(1));
        damage(lines);
        assertEquals(1, repaired().entriesLost());
    }

    @Test
    void theRepairedJournalGoesOnAndIsRepairedAgain() {
        List<String> lines = lines();
        lines.set(7, "");
        damage(lines);
        repaired();
        try (Journal journal = Journal.open(disk, PATH, clock.journalClock())) {
            assertEquals(written.size() + 2, journal.append(EveryKind.trial(9, 48)).sequence());
        }
        whole = bytes(PATH);
        lines = lines();
        lines.set(9, "{}");
        damage(lines);
        assertEquals("journal.jsonl.damaged-2", repaired().keptAs());
    }

    @Test
    void rubbishIsNotRepairedIntoAnEmptyJournal() {
        disk.overwrite(PATH, "rubbish\n".getBytes(StandardCharsets.US_ASCII));
        Refused refused = assertThrows(Refused.class, () -> JournalRepair.repair(disk, PATH, clock.journalClock()));
        assertEquals("no entry can be read", refused.problems().get(0).what());
        assertArrayEquals("rubbish\n".getBytes(StandardCharsets.US_ASCII), bytes(PATH));
    }

    @Test
    void aFailureAtAnyCallLeavesADamagedOrARepairedJournalAndNothingBetween() {
        List<String> lines = lines();
        lines.set(4, lines.get(4).replace("matters", "mattens"));
        byte[] damaged = (String.join("\n", lines) + "\n").getBytes(StandardCharsets.UTF_8);
        boolean reachedTheEnd = false;
        for (int at = 1; !reachedTheEnd; at++) {
            FakeDisk failing = diskWith(damaged);
            int failed = failing.calls().size() + at;
            failing.fail((number, call) -> number == failed);
            try {
                JournalRepair.repair(failing, PATH, clock.journalClock());
                reachedTheEnd = failing.calls().size() < failed;
            } catch (Refused e) {
                assertTrue(e.getCause() instanceof IOException, e::toString);
            }
            failing.fail((number, call) -> false);
            Reading found = JournalReader.read(failing, PATH);
            assertTrue(found.entries().size() >= written.size() - 1, "call " + at + ": " + found.damages());
            JournalRepair.repair(failing, PATH, clock.journalClock());
            assertTrue(JournalReader.read(failing, PATH).isSound(), "tried again after call " + at);
            assertEquals(0, failing.openFiles());
        }
    }

    private static FakeDisk diskWith(byte[] content) {
        FakeDisk disk = new FakeDisk();
        try {
            disk.createFolder(FOLDER);
        } catch (IOException e) {
            throw new AssertionError(e);
        }
        disk.overwrite(PATH, content);
        return disk;
    }
}
