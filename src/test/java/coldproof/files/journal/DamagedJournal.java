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
import java.util.function.Supplier;
import tools.jackson.core.json.JsonFactory;

/** A journal as it was written, and what must be true of every reading of it after a damage. */
final class DamagedJournal {
    private static final JsonFactory JSON = JsonFactory.builder().build();
    private final byte[] whole;
    private final byte[] copy;
    private final Head head;
    private final List<Entry> entries;
    private final int[] lineOfByte;
    private final Map<Integer, Line> lineByStart = new HashMap<>();

    /** Opens a journal and writes the events from number {@code first}, 2 or more, to {@code last}: every third of another kind, the others trials. */
    DamagedJournal(int first, int last) throws IOException {
        FakeDisk disk = new FakeDisk();
        FakeClock clock = new FakeClock();
        Path path = Path.of("/study/journal.jsonl");
        disk.createFolder(path.getParent());
        List<Event> kinds = EveryKind.events();
        try (Journal journal = Journal.open(disk, path, clock.journalClock())) {
            for (int n = first; n <= last; n++) {
                clock.pass(Duration.ofSeconds(17));
                journal.append(n % 3 == 0 ? kinds.get(n / 3 % kinds.size()) : EveryKind.trial(n, 48 + n / 7.0));
            }
            entries = journal.entries();
        }
        whole = disk.read(path);
        copy = whole.clone();
        head = Head.read(disk, path).orElseThrow();
        lineOfByte = new int[whole.length];
        int start = 0;
        int line = 1;
        for (int i = 0; i < whole.length; i++) {
            lineOfByte[i] = line;
            if (whole[i] == '\n') {
                lineByStart.put(start, Line.read(JSON, whole, start, i));
                start = i + 1;
                line++;
            }
        }
        assertEquals(last - first + 2, entries.size());
    }

    int length() {
        return whole.length;
    }

    int entries() {
        return entries.size();
    }

    byte at(int place) {
        return whole[place];
    }

    int lineOf(int place) {
        return lineOfByte[place];
    }

    /** Lines that are as written are not parsed again: their sums were checked, and parsing a billion of them would take a day. */
    private Reading read(byte[] bytes, int changedFrom) {
        return new Reading("journal.jsonl", bytes, new LineScan(bytes, () -> (all, from, to) -> {
            Line known = lineByStart.get(from);
            boolean asWritten = known != null && to < changedFrom || known != null && from > changedFrom;
            return all == bytes && asWritten ? known : Line.read(JSON, all, from, to);
        }), Optional.of(head));
    }

    /** Changes one byte, reads, and puts it back: a fresh copy for each of millions of changes would take longer than reading it. */
    void changed(int at, byte to) {
        copy[at] = to;
        Reading reading = read(copy, at);
        copy[at] = whole[at];
        Supplier<String> what = () -> "byte " + at + " of line " + lineOfByte[at] + " changed from " + whole[at] + " to " + to + ": " + reading.damages();
        assertFalse(reading.isSound(), what);
        int line = lineOfByte[at];
        // a changed line break shows at the line it ended or at the one behind it; a byte that became one, likewise
        assertTrue(reading.damagedLines().stream().allMatch(found -> found == line || found == line + 1), what);
        assertTrue(reading.entries().size() >= entries.size() - 1, () -> "only " + reading.entries().size() + " are readable: " + what.get());
        for (Entry entry : reading.entries()) {
            assertEquals(entries.get((int) entry.sequence() - 1), entry, what);
        }
    }

    /** Reads only so many of its bytes. */
    void cut(int length) {
        Reading reading = read(Arrays.copyOf(whole, length), Integer.MAX_VALUE);
        String what = "cut after " + length + " bytes";
        long readable = lineByStart.keySet().stream().filter(start -> end(start) <= length).count();
        assertEquals(readable, reading.entries().size(), what);
        assertEquals(entries.subList(0, (int) readable), reading.entries(), what);
        assertFalse(reading.isSound(), what);
        int line = length == 0 ? 1 : lineOfByte[length - 1];
        assertTrue(reading.damagedLines().stream().allMatch(found -> found == line || found == line + 1), () -> what + ": " + reading.damages());
    }

    private int end(int start) {
        int end = start;
        while (whole[end] != '\n') {
            end++;
        }
        return end;
    }
}
