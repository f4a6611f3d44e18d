package coldproof.files.journal;

import coldproof.study.Entry;
import coldproof.study.Event;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;

/**
 * A journal written anew, line by line, to take the place of one that stays beside it under another name. There is a whole journal of the
 * usual name at every moment, whenever the power goes.
 */
final class Rewriting {
    private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    private final JournalClock clock;
    private final String process;
    private long lastSum = Sum.NONE;
    private long lastSequence;

    Rewriting(JournalClock clock) {
        this.clock = clock;
        this.process = clock.marks().get();
    }

    /** Takes a line over as it was written. */
    void keep(Found found) {
        line(Line.relinked(found.bytes(), lastSum), found.sequence());
    }

    /** Adds an entry. */
    void add(Entry entry) {
        line(Line.encode(entry, lastSum), entry.sequence());
    }

    /** Adds an event that happens now. */
    Entry add(Event event) {
        OffsetDateTime now = OffsetDateTime.now(clock.wall()).truncatedTo(ChronoUnit.MILLIS);
        Entry entry = new Entry(lastSequence + 1, now, 0, process, event);
        add(entry);
        return entry;
    }

    private void line(byte[] line, long sequence) {
        bytes.writeBytes(line);
        lastSum = Sum.read(line, Line.sumPlace(line.length - 1));
        lastSequence = sequence;
    }

    long lastSequence() {
        return lastSequence;
    }

    /** A name beside the journal that is free: {@code journal.jsonl.damaged-1}. */
    static Path freeName(Disk disk, Path path, String word) throws IOException {
        int copy = 1;
        while (disk.exists(path.resolveSibling(path.getFileName() + "." + word + "-" + copy))) {
            copy++;
        }
        return path.resolveSibling(path.getFileName() + "." + word + "-" + copy);
    }

    /** Keeps the old content under another name, then puts the new content in its place. */
    void replace(Disk disk, Path path, byte[] old, Path keepAs) throws IOException {
        put(disk, keepAs, old);
        put(disk, path, bytes.toByteArray());
        try (Disk.OpenFile head = Head.open(disk, path)) {
            head.write(0, new Head(lastSequence, lastSum).bytes());
        }
    }

    private static void put(Disk disk, Path path, byte[] content) throws IOException {
        Path made = path.resolveSibling("journal.new"); // left behind by a failure, it is written over next time
        try (Disk.OpenFile file = disk.exists(made) ? disk.open(made) : disk.create(made)) {
            file.truncate(0);
            file.write(0, ByteBuffer.wrap(content));
            file.force();
        }
        disk.rename(made, path);
        disk.forceFolder(path.toAbsolutePath().getParent());
    }
}
