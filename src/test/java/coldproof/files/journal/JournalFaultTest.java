package coldproof.files.journal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import coldproof.quantity.Refused;
import coldproof.study.Entry;
import coldproof.study.Event;
import coldproof.study.EventKind;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.function.BiPredicate;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;

/** A whole session, from making the journal to its last entry, with a failure at every call to the disk. */
class JournalFaultTest {
    private static final Path FOLDER = Path.of("/study");
    private static final Path PATH = FOLDER.resolve("journal.jsonl");
    private final List<Event> session = EveryKind.events().subList(0, 20);
    private final FakeClock clock = new FakeClock();

    private static FakeDisk disk() {
        FakeDisk disk = new FakeDisk();
        try {
            disk.createFolder(FOLDER);
        } catch (IOException e) {
            throw new AssertionError(e);
        }
        return disk;
    }

    private Journal open(Disk disk) {
        return Journal.open(disk, PATH, clock.journalClock());
    }

    /** Runs the session; whatever is refused is tried again at once, as often as allowed. */
    private List<Event> run(FakeDisk disk, int tries) {
        List<Event> acknowledged = new ArrayList<>();
        Journal journal = retried(() -> open(disk), tries);
        for (Event event : session) {
            acknowledged.add(retried(() -> journal.append(event), tries).event());
        }
        retried(() -> {
            journal.close();
            return journal;
        }, tries);
        return acknowledged;
    }

    private static <T> T retried(Supplier<T> step, int tries) {
        for (int i = 1;; i++) {
            try {
                return step.get();
            } catch (Refused e) {
                assertTrue(e.getCause() instanceof IOException, () -> "the cause is kept: " + e);
                assertTrue(e.problems().get(0).what().startsWith("journal"), () -> "it is said what failed: " + e);
                if (i == tries) {
                    throw e;
                }
            }
        }
    }

    private static List<Event> recorded(Disk disk) {
        return JournalReader.read(disk, PATH).entries().stream().map(Entry::event).toList();
    }

    private int callsOfACleanSession() {
        FakeDisk disk = disk();
        run(disk, 1);
        return disk.calls().size();
    }

    private void sessionSurvives(BiPredicate<Integer, FakeDisk.Call> failures, int tries, String what) {
        FakeDisk disk = disk();
        disk.fail(failures);
        run(disk, tries);
        disk.fail((number, call) -> false);
        Reading reading = JournalReader.read(disk, PATH);
        List<Event> events = new ArrayList<>(recorded(disk));
        events.removeIf(event -> event.kind() == EventKind.JOURNAL_MENDED && !session.contains(event));
        assertEquals(session, events.subList(1, events.size()), what);
        assertEquals(List.of(), reading.damages(), what);
        assertEquals(0, disk.openFiles(), what);
    }

    @Test
    void oneFailureAtAnyCallLosesNothingAndDoublesNothingWhenTriedAgain() {
        int calls = callsOfACleanSession();
        for (int at = 1; at <= calls; at++) {
            int failing = at;
            sessionSurvives((number, call) -> number == failing, 2, "call " + failing + " failed");
        }
    }

    @Test
    void twoFailuresInARowAtAnyCallLoseNothingAndDoubleNothing() {
        int calls = callsOfACleanSession();
        for (int at = 1; at <= calls; at++) {
            int failing = at;
            sessionSurvives((number, call) -> number == failing || number == failing + 1, 3, "calls from " + failing + " failed");
        }
    }

    @Test
    void anyFailuresAtAllLoseNothingAndDoubleNothing() {
        for (long seed = 1; seed <= 100; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            sessionSurvives((number, call) -> random.nextInt(6) == 0, 1000, "seed " + seed);
        }
    }

    /** Nothing acknowledged is ever missing, nothing is there twice, and at most the entry that was being tried is there besides. */
    private void foundAfterwards(Disk disk, List<Event> acknowledged, String what) {
        if (acknowledged.isEmpty()) {
            return; // the journal itself was never acknowledged
        }
        List<Event> events = new ArrayList<>(recorded(disk));
        events.remove(0);
        int sure = acknowledged.size();
        assertTrue(events.size() == sure || events.size() == sure + 1, () -> what + ": " + events.size() + " of " + sure);
        assertEquals(session.subList(0, events.size()), events, what);
        try (Journal journal = Journal.open(disk, PATH, clock.journalClock())) {
            assertEquals(acknowledged, journal.entries().stream().map(Entry::event).skip(1).limit(sure).toList(), what);
        }
        assertTrue(JournalReader.read(disk, PATH).isSound(), () -> what + ": " + JournalReader.read(disk, PATH).damages());
    }

    @Test
    void aPowerCutAtAnyCallKeepsEveryAcknowledgedEntryOnce() {
        int calls = callsOfACleanSession();
        for (int at = 1; at <= calls; at++) {
            for (long seed = 1; seed <= 3; seed++) {
                FakeDisk disk = disk();
                List<Event> acknowledged = cutAt(disk, at);
                String what = "power cut at call " + at + ", seed " + seed;
                foundAfterwards(disk.afterPowerCut(new SplittableRandom(seed * 1000 + at)), acknowledged, what);
            }
        }
    }

    private List<Event> cutAt(FakeDisk disk, int at) {
        List<Event> acknowledged = new ArrayList<>();
        disk.fail((number, call) -> number >= at);
        try {
            Journal journal = open(disk);
            for (Event event : session) {
                acknowledged.add(journal.append(event).event());
            }
        } catch (Refused e) {
            assertTrue(disk.calls().size() >= at);
        }
        return acknowledged;
    }

    @Test
    void aMediumGoneForGoodLetsTheEntryBeWrittenElsewhere() throws IOException {
        Path spare = Path.of("/spare");
        Path rescue = spare.resolve("rescue.jsonl");
        int calls = callsOfACleanSession();
        for (int at = 8; at <= calls; at++) {
            FakeDisk disk = disk();
            disk.createFolder(spare);
            Journal journal = open(disk);
            int gone = at;
            disk.fail((number, call) -> number >= gone && journal.path().equals(PATH) && call != FakeDisk.Call.CREATE
                    && call != FakeDisk.Call.FORCE_FOLDER);
            List<Event> events = new ArrayList<>();
            for (Event event : session) {
                events.add(appendOrGoElsewhere(disk, journal, rescue, event).event());
            }
            assertEquals(session, events);
            disk.fail((number, call) -> false);
            journal.close();
            Set<Long> sequences = new HashSet<>();
            List<Event> both = new ArrayList<>();
            for (Path path : disk.exists(rescue) ? List.of(PATH, rescue) : List.of(PATH)) {
                JournalReader.read(disk, path).entries().forEach(entry -> {
                    if (sequences.add(entry.sequence())) {
                        both.add(entry.event());
                    }
                });
            }
            assertEquals(session, both.subList(1, both.size()), "gone from call " + at);
        }
    }

    private static Entry appendOrGoElsewhere(FakeDisk disk, Journal journal, Path rescue, Event event) {
        try {
            return journal.append(event);
        } catch (Refused e) {
            assertEquals(event, journal.pending().orElseThrow().event());
            disk.fail((number, call) -> false);
            journal.continueIn(rescue);
            return journal.append(event);
        }
    }

    @Test
    void aFullDiskIsSaidAndTheEntryIsTakenOnceThereIsRoom() {
        FakeDisk disk = disk();
        try (Journal journal = open(disk)) {
            journal.append(session.get(0));
            for (int free = 0; free < 400; free += 7) {
                disk.holdAtMost(disk.used() + free);
                int before = journal.entries().size();
                try {
                    journal.append(EveryKind.trial(before, 48));
                } catch (Refused e) {
                    assertTrue(e.problems().get(0).what().endsWith("the disk is full"), e::toString);
                    assertTrue(e.problems().get(0).remedy().startsWith("Entry " + (before + 1) + " is not recorded."), e::toString);
                    assertEquals(before, journal.entries().size());
                    disk.holdAtMost(Long.MAX_VALUE);
                    assertEquals(before, recorded(disk).size());
                    journal.append(EveryKind.trial(before, 48));
                }
                assertEquals(before + 1, recorded(disk).size());
            }
        }
        assertTrue(JournalReader.read(disk, PATH).isSound());
    }

    @Test
    void aFileReplacedByAnotherProgramIsNotWrittenTo() throws IOException {
        FakeDisk disk = disk();
        try (Journal journal = open(disk)) {
            journal.append(session.get(0));
            byte[] copy = disk.read(PATH);
            disk.overwrite(PATH, "something else\n".getBytes(StandardCharsets.US_ASCII));
            for (int i = 0; i < 2; i++) {
                try {
                    journal.append(session.get(1));
                    fail("written into a file that is not ours");
                } catch (Refused e) {
                    assertTrue(e.problems().get(0).what().contains("another program"), e::toString);
                }
            }
            assertEquals("something else\n", new String(disk.read(PATH), StandardCharsets.US_ASCII));
            disk.overwrite(PATH, copy);
            journal.append(session.get(1));
        }
        assertEquals(3, recorded(disk).size());
    }

    @Test
    void aHeadThatCannotBeWrittenLosesNoEntry() {
        FakeDisk disk = disk();
        try (Journal journal = open(disk)) {
            disk.fail((number, call) -> call == FakeDisk.Call.WRITE && disk.calls().get(number - 2) == FakeDisk.Call.STILL_NAMED
                    && disk.calls().get(number - 3) == FakeDisk.Call.FORCE);
            journal.append(session.get(0));
            assertEquals(1, journal.problems().size());
            assertTrue(journal.problems().get(0).what().startsWith("journal.head could not be written"));
            disk.fail((number, call) -> false);
            journal.append(session.get(1));
            assertEquals(List.of(), journal.problems());
        }
        assertEquals(3, recorded(disk).size());
    }
}
