package coldproof.files.journal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.study.Entry;
import coldproof.study.Event;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import tools.jackson.core.json.JsonFactory;

/** A journal of 200 entries with every single byte changed, and cut at every place: detected, located, and the rest readable. */
class EveryDamageTest {
    private static final int ENTRIES = 200;
    private static byte[] whole;
    private static Head head;
    private static List<Entry> entries;
    private static int[] lineOfByte;
    private static Map<Integer, Line> lineByStart;

    @BeforeAll
    static void record() throws IOException {
        FakeDisk disk = new FakeDisk();
        FakeClock clock = new FakeClock();
        Path path = Path.of("/study/journal.jsonl");
        disk.createFolder(path.getParent());
        List<Event> kinds = EveryKind.events();
        try (Journal journal = Journal.open(disk, path, clock.journalClock())) {
            for (int n = 2; n <= ENTRIES; n++) {
                clock.pass(Duration.ofSeconds(17));
                journal.append(n % 3 == 0 ? kinds.get(n / 3 % kinds.size()) : EveryKind.trial(n, 48 + n / 7.0));
            }
            entries = journal.entries();
        }
        whole = disk.read(path);
        head = Head.read(disk, path).orElseThrow();
        lineOfByte = new int[whole.length];
        lineByStart = new HashMap<>();
        int start = 0;
        int line = 1;
        for (int i = 0; i < whole.length; i++) {
            lineOfByte[i] = line;
            if (whole[i] == '\n') {
                lineByStart.put(start, Line.read(JsonFactory.builder().build(), whole, start, i));
                start = i + 1;
                line++;
            }
        }
        assertEquals(ENTRIES, entries.size());
    }

    /** Lines that are as written are not parsed again: their sums were checked, and parsing a billion of them would take a day. */
    private static Reading read(byte[] bytes, int changedFrom) {
        JsonFactory json = JsonFactory.builder().build();
        return new Reading("journal.jsonl", bytes, new LineScan(bytes, (all, from, to) -> {
            Line known = lineByStart.get(from);
            boolean asWritten = known != null && to < changedFrom || known != null && from > changedFrom;
            return all == bytes && asWritten ? known : Line.read(json, all, from, to);
        }), Optional.of(head));
    }

    private static void changed(int at, byte to) {
        byte[] bytes = whole.clone();
        bytes[at] = to;
        Reading reading = read(bytes, at);
        String what = "byte " + at + " of line " + lineOfByte[at] + " changed from " + whole[at] + " to " + to;
        assertFalse(reading.isSound(), what);
        int line = lineOfByte[at];
        // a changed line break shows at the line it ended or at the one behind it; a byte that became one, likewise
        assertTrue(reading.damagedLines().stream().allMatch(found -> found == line || found == line + 1), () -> what + ": " + reading.damages());
        assertTrue(reading.entries().size() >= ENTRIES - 1, () -> what + ": only " + reading.entries().size() + " are readable: " + reading.damages());
        for (Entry entry : reading.entries()) {
            assertEquals(entries.get((int) entry.sequence() - 1), entry, what);
        }
    }

    @Test
    void aChangeOfAnyByteIsDetectedAndLocatedAndTheRestIsReadable() {
        SplittableRandom random = new SplittableRandom(1);
        int step = 499; // every byte is the long test's work
        for (int at = 0; at < whole.length; at += 1 + random.nextInt(step)) {
            changed(at, (byte) (whole[at] ^ 1 << random.nextInt(8)));
            changed(at, whole[at] == '\n' ? (byte) ' ' : (byte) '\n');
        }
    }

    @Test
    @Tag("long")
    void aChangeOfEveryByteIsDetectedAndLocatedAndTheRestIsReadable() {
        for (int at = 0; at < whole.length; at++) {
            SplittableRandom random = new SplittableRandom(at);
            changed(at, (byte) (whole[at] ^ 1 << random.nextInt(8)));
            changed(at, whole[at] == '\n' ? (byte) '\r' : (byte) '\n');
            changed(at, (byte) (whole[at] + 1 + random.nextInt(255)));
        }
    }

    @Test
    void aChangeOfEveryByteOfTheFirstAndLastLineIsDetected() {
        for (int at = 0; at < whole.length; at++) {
            if (lineOfByte[at] == 1 || lineOfByte[at] == ENTRIES) {
                changed(at, (byte) (whole[at] ^ 1));
                changed(at, (byte) (whole[at] ^ 0x20));
            }
        }
    }

    private static void cut(int length) {
        Reading reading = read(Arrays.copyOf(whole, length), Integer.MAX_VALUE);
        String what = "cut after " + length + " bytes";
        long readable = lineByStart.keySet().stream().filter(start -> end(start) <= length).count();
        assertEquals(readable, reading.entries().size(), what);
        assertEquals(entries.subList(0, (int) readable), reading.entries(), what);
        assertFalse(reading.isSound(), what);
        int line = length == 0 ? 1 : lineOfByte[length - 1];
        assertTrue(reading.damagedLines().stream().allMatch(found -> found == line || found == line + 1), () -> what + ": " + reading.damages());
    }

    private static int end(int start) {
        int end = start;
        while (whole[end] != '\n') {
            end++;
        }
        return end;
    }

    @Test
    void aCutAtAnyPlaceIsDetectedAndAllBeforeItIsReadable() {
        for (int length = 0; length < whole.length; length += length < 500 || length > whole.length - 500 ? 1 : 211) {
            cut(length);
        }
    }

    @Test
    @Tag("long")
    void aCutAtEveryPlaceIsDetectedAndAllBeforeItIsReadable() {
        for (int length = 0; length < whole.length; length++) {
            cut(length);
        }
    }
}
