package coldproof.files.journal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.quantity.Refused;
import coldproof.study.Event;
import coldproof.study.JournalsMerged;
import coldproof.study.MergeChoice;
import coldproof.study.MergedEntries;
import coldproof.study.NoteAdded;
import coldproof.study.PlanAmended;
import coldproof.study.StudyState;
import coldproof.study.Trial;
import coldproof.study.TrialCorrected;
import coldproof.study.TrialSkipped;
import coldproof.study.TrialUndone;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class JournalMergeTest {
    private static final Path HERE = Path.of("/here/journal.jsonl");
    private static final Path THERE = Path.of("/there/journal.jsonl");
    private final FakeClock clock = new FakeClock();
    private final FakeDisk disk = new FakeDisk();

    @BeforeEach
    void twoCopies() throws IOException {
        disk.createFolder(HERE.getParent());
        disk.createFolder(THERE.getParent());
        log(HERE, EveryKind.trial(1, 48), EveryKind.trial(2, 49));
        disk.overwrite(THERE, disk.read(HERE));
    }

    private void log(Path path, Event... events) {
        try (Journal journal = Journal.open(disk, path, clock.journalClock())) {
            for (Event event : events) {
                clock.pass(Duration.ofMinutes(4));
                journal.append(event);
            }
        }
    }

    private StudyState merge(MergeChoice choice) {
        Reading first = JournalReader.read(disk, HERE);
        MergedEntries merged = JournalMerge.plan(HERE, first, THERE, JournalReader.read(disk, THERE), choice);
        JournalMerge.write(disk, HERE, first, merged, choice, clock.journalClock());
        Reading after = JournalReader.read(disk, HERE);
        assertEquals(List.of(), after.damages());
        return StudyState.fold(after.entries());
    }

    private static List<Integer> positions(StudyState state) {
        return state.trials().stream().map(Trial::position).toList();
    }

    @Test
    void trialsOfBothFollowWhatBothHave() {
        log(HERE, EveryKind.trial(3, 50));
        log(THERE, EveryKind.trial(4, 51), new NoteAdded("over there", OptionalLong.of(4)));
        log(HERE, EveryKind.trial(5, 52));
        StudyState state = merge(MergeChoice.NEITHER);
        assertEquals(List.of(1, 2, 3, 4, 5), positions(state), "in the order of the clocks");
        assertEquals(OptionalLong.of(5), state.notes().get(0).event().about(), "a note still points at its trial");
        JournalsMerged event = (JournalsMerged) JournalReader.read(disk, HERE).entries().get(7).event();
        assertEquals(new JournalsMerged(3, 2, 2, List.of()), event);
    }

    @Test
    void theJournalAsItWasIsKept() throws IOException {
        log(HERE, EveryKind.trial(3, 50));
        log(THERE, EveryKind.trial(4, 51));
        byte[] before = disk.read(HERE);
        merge(MergeChoice.NEITHER);
        assertArrayEquals(before, disk.read(HERE.resolveSibling("journal.jsonl.before-merge-1")));
    }

    @Test
    void oneThatOnlyWentOnIsTakenOver() {
        log(THERE, EveryKind.trial(3, 50));
        assertEquals(List.of(1, 2, 3), positions(merge(MergeChoice.NEITHER)));
    }

    @Test
    void copiesMergedOnceAreMergedAgainWithoutDoubles() {
        log(HERE, EveryKind.trial(3, 50));
        log(THERE, EveryKind.trial(4, 51));
        merge(MergeChoice.NEITHER);
        log(THERE, EveryKind.trial(5, 52), new TrialUndone(4, "the fan rattled"));
        StudyState state = merge(MergeChoice.NEITHER);
        assertEquals(List.of(1, 2, 3, 5), positions(state), "the undo of there still finds its trial here");
    }

    @Test
    void oneTrialRecordedInBothIsAConflictThatNamesTheEntries() throws IOException {
        log(HERE, EveryKind.trial(3, 50));
        log(THERE, EveryKind.trial(3, 51.5));
        byte[] before = disk.read(HERE);
        Refused refused = assertThrows(Refused.class, () -> merge(MergeChoice.NEITHER));
        assertEquals(1, refused.problems().size());
        String what = refused.problems().get(0).what();
        assertTrue(what.startsWith("trial 3 was recorded or skipped in both; first copy: entry 4 of ") && what.contains("score 51.5 frames/s"), what);
        assertArrayEquals(before, disk.read(HERE));
    }

    @Test
    void aConflictIsSettledByTakingTheOtherBack() {
        log(HERE, EveryKind.trial(3, 50));
        log(THERE, EveryKind.trial(3, 51.5), EveryKind.trial(4, 52));
        StudyState state = merge(MergeChoice.SECOND);
        assertEquals(51.5, state.trialAt(3).orElseThrow().score());
        assertEquals(4, state.trials().size());
        assertEquals(1, state.deviations().stream().filter(deviation -> deviation.text().contains("settled when two copies")).count());
    }

    @Test
    void aSkipAgainstATrialAndTwoCorrectionsAreConflicts() {
        log(HERE, new TrialSkipped(3, "sleet"), new TrialCorrected(2, 48.5, "digits"));
        log(THERE, EveryKind.trial(3, 50), new TrialCorrected(2, 47.5, "digits"));
        Refused refused = assertThrows(Refused.class, () -> merge(MergeChoice.NEITHER));
        assertEquals(2, refused.problems().size());
        StudyState state = merge(MergeChoice.FIRST);
        assertEquals(48.5, state.trialAt(1).orElseThrow().score());
        assertEquals("sleet", state.skipped().get(3));
    }

    @Test
    void theSameCorrectionInBothIsNone() {
        log(HERE, new TrialCorrected(2, 48.5, "digits"));
        log(THERE, new TrialCorrected(2, 48.5, "digits swapped"));
        assertEquals(48.5, merge(MergeChoice.NEITHER).trialAt(1).orElseThrow().score());
    }

    @Test
    void twoPlansAreNotSettledByAChoice() {
        log(HERE, new PlanAmended("11ee".repeat(16), Optional.empty(), "quieter"));
        log(THERE, new PlanAmended("22ff".repeat(16), Optional.empty(), "louder"));
        Refused refused = assertThrows(Refused.class, () -> merge(MergeChoice.FIRST));
        assertTrue(refused.problems().get(0).remedy().contains("cannot be settled by a choice"), refused::toString);
    }

    @Test
    void anotherStudyIsNotMerged() {
        Path other = Path.of("/there/other.jsonl");
        log(other, EveryKind.trial(1, 48));
        Reading first = JournalReader.read(disk, HERE);
        Reading second = JournalReader.read(disk, other);
        Refused refused = assertThrows(Refused.class, () -> JournalMerge.plan(HERE, first, other, second, MergeChoice.FIRST));
        assertEquals("the two journals are not copies of one study", refused.problems().get(0).what());
    }

    @Test
    void aJournalThatWentOnElsewhereIsTakenIn() {
        Path rescue = Path.of("/there/rescue.jsonl");
        try (Journal journal = Journal.open(disk, HERE, clock.journalClock())) {
            clock.pass(Duration.ofMinutes(4));
            journal.append(EveryKind.trial(3, 50));
            journal.continueIn(rescue);
            clock.pass(Duration.ofMinutes(4));
            journal.append(EveryKind.trial(4, 51));
        }
        Reading first = JournalReader.read(disk, HERE);
        MergedEntries merged = JournalMerge.plan(HERE, first, rescue, JournalReader.read(disk, rescue), MergeChoice.NEITHER);
        assertEquals(List.of(1, 2, 3, 4), positions(StudyState.fold(merged.entries())));
        assertEquals(1, merged.fromSecond());
    }

    @Test
    void aDamagedCopyIsToBeRepairedFirst() throws IOException {
        log(THERE, EveryKind.trial(3, 50));
        byte[] bytes = disk.read(THERE);
        bytes[bytes.length / 2] ^= 1;
        disk.overwrite(THERE, bytes);
        Refused refused = assertThrows(Refused.class, () -> merge(MergeChoice.NEITHER));
        assertTrue(refused.problems().get(0).what().startsWith("the journal is damaged at line"), refused::toString);
    }

    @Test
    void anEntryAlteredInOneCopyIsFoundThoughItsSumsAreRight() {
        Reading first = JournalReader.read(disk, HERE);
        Rewriting forged = new Rewriting(clock.journalClock());
        first.entries().forEach(entry -> forged.add(entry.sequence() != 3 ? entry
                : new coldproof.study.Entry(3, entry.at(), entry.monotonicSeconds(), entry.process(), EveryKind.trial(2, 59))));
        try {
            forged.replace(disk, THERE, new byte[0], Path.of("/there/old"));
        } catch (IOException e) {
            throw new AssertionError(e);
        }
        Refused refused = assertThrows(Refused.class, () -> merge(MergeChoice.SECOND));
        assertTrue(refused.problems().get(0).what().startsWith("an entry that both have was changed in one of them; first copy: entry 3"), refused::toString);
    }
}
