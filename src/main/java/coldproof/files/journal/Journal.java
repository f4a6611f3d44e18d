package coldproof.files.journal;

import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import coldproof.study.Entry;
import coldproof.study.Event;
import coldproof.study.JournalBegun;
import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/**
 * A journal open for writing. {@link #append} returns only when the entry is on the medium; when it does not return, the entry is not
 * recorded, the file holds what it held before, and the same event can be appended again or {@linkplain #continueIn elsewhere}. One process
 * at a time may have a journal open: {@code files.folder} sees to that.
 */
public final class Journal implements Closeable {
    /** The line format this version writes. */
    static final int FORMAT = 1;
    private static final double NANOS_PER_MILLI = 1e6;
    private static final double MILLIS_PER_SECOND = 1e3;
    private final Disk disk;
    private final JournalClock clock;
    private final String process;
    private final long openedAtNanos;
    private final List<Entry> entries = new ArrayList<>();
    private final List<Problem> problems = new ArrayList<>();
    private JournalFile file;
    private long nextSequence = 1;
    private long lastSum = Sum.NONE;
    private Optional<Entry> pending = Optional.empty();
    private Optional<Reading> base = Optional.empty();

    private Journal(Disk disk, JournalClock clock) {
        this.disk = disk;
        this.clock = clock;
        this.process = clock.marks().get();
        this.openedAtNanos = clock.monotonicNanos().getAsLong();
    }

    /**
     * Opens a journal, or begins one where there is none. A last line that was cut short is set aside in a file of its own beside the
     * journal, before it is cut off; that is recorded. Damage elsewhere stays as it is and is among the {@link #problems}.
     *
     * @throws Refused if the file cannot be read or written, is no journal, or was begun by a newer version
     */
    public static Journal open(Disk disk, Path path, JournalClock clock) {
        return opened(disk, path, new Journal(disk, clock));
    }

    private static Journal opened(Disk disk, Path path, Journal journal) {
        try {
            journal.file = JournalFile.open(disk, path);
        } catch (IOException e) {
            throw DiskTrouble.refused(disk, "could not be opened for writing", path, "nothing was changed", e);
        }
        try {
            journal.start(path);
        } catch (IOException e) {
            throw journal.closedAfter(DiskTrouble.refused(disk, "could not be mended and begun", path, "no entry was changed", e));
        } catch (Refused e) {
            throw journal.closedAfter(e);
        }
        return journal;
    }

    /**
     * Goes on from a journal that cannot be written, in a file elsewhere that is new or went on from it before.
     *
     * @param base what the journal holds
     * @throws Refused if the file cannot be read or written, or is no continuation of that journal
     */
    public static Journal openElsewhere(Disk disk, Reading base, Path elsewhere, JournalClock clock) {
        Journal journal = new Journal(disk, clock);
        journal.base = Optional.of(base);
        return opened(disk, elsewhere, journal);
    }

    private Refused closedAfter(Refused refused) {
        try {
            file.close();
        } catch (IOException e) {
            refused.addSuppressed(e);
        }
        return refused;
    }

    private void start(Path path) throws IOException {
        Reading reading = file.reading();
        refuseWhatIsNoJournal(path, reading);
        if (base.isPresent()) {
            goOnFrom(base.get(), path, reading);
            return;
        }
        problems.addAll(reading.problems());
        entries.addAll(reading.entries());
        nextSequence = reading.nextSequence();
        lastSum = reading.lastSum();
        List<Event> mended = file.mendTail(reading);
        if (entries.isEmpty()) {
            append(new JournalBegun(FORMAT, clock.marks().get()));
        }
        mended.forEach(this::append);
    }

    private void goOnFrom(Reading before, Path path, Reading reading) throws IOException {
        if (!reading.entries().isEmpty() && !reading.continues(before)) {
            throw new Refused(Problem.of("this file does not go on from the study's journal", Place.named(path.toString()),
                    "a new file, or one that went on from it before; nothing was changed", "Give another name."));
        }
        entries.addAll(before.entries());
        entries.addAll(reading.entries());
        nextSequence = reading.entries().isEmpty() ? before.nextSequence() : reading.nextSequence();
        lastSum = reading.entries().isEmpty() ? before.lastSum() : reading.lastSum();
        file.mendTail(reading).forEach(this::append);
    }

    private static void refuseWhatIsNoJournal(Path path, Reading reading) {
        String name = path.getFileName().toString();
        boolean begun = reading.entries().stream().findFirst().isPresent();
        if (!begun && !reading.damagedLines().isEmpty() && reading.wholeLength() > 0) {
            throw new Refused(Problem.of(name + " holds no entry that can be read", Place.of(path.toString(), 1, 0),
                    "a journal, one entry a line", "if it is a damaged journal, bring back a copy; else move the file away"));
        }
        if (begun && reading.entries().get(0).event() instanceof JournalBegun first && first.format() > FORMAT) {
            throw new Refused(Problem.of(name + " was begun by a newer version (line format " + first.format() + ")",
                    Place.of(path.toString(), 1, 0), "line format " + FORMAT + " or older; nothing was changed",
                    "install a newer version"));
        }
    }

    /**
     * Records an event. When this returns, the entry is on the medium.
     *
     * @throws Refused if it is not recorded; the problem says what failed. Appending an equal event next tries the same entry again,
     *     with the time of the first attempt.
     */
    public synchronized Entry append(Event event) {
        Entry entry = pending.filter(waiting -> waiting.event().equals(event)).orElseGet(() -> envelope(event));
        pending = Optional.of(entry);
        byte[] line = Line.encode(entry, lastSum);
        try {
            file.append(line);
        } catch (IOException e) {
            throw DiskTrouble.refused(disk, "could not be written", file.path(), "entry " + entry.sequence() + " is not recorded", e);
        }
        pending = Optional.empty();
        lastSum = Sum.read(line, Line.sumPlace(line.length - 1));
        file.moveHead(new Head(entry.sequence(), lastSum));
        nextSequence = entry.sequence() + 1;
        entries.add(entry);
        return entry;
    }

    private Entry envelope(Event event) {
        OffsetDateTime now = OffsetDateTime.now(clock.wall()).truncatedTo(ChronoUnit.MILLIS);
        double millis = Math.rint((clock.monotonicNanos().getAsLong() - openedAtNanos) / NANOS_PER_MILLI);
        return new Entry(nextSequence, now, millis / MILLIS_PER_SECOND, process, event);
    }

    /**
     * Goes on in another, new file, as when the medium is full or gone. Its first entry continues the last one recorded, so that the two
     * files can be merged later. An event whose append failed is to be appended again.
     *
     * @throws Refused if the file is there already or cannot be made; the journal then stays where it is
     */
    public synchronized void continueIn(Path elsewhere) {
        JournalFile next;
        try {
            next = JournalFile.create(disk, elsewhere);
        } catch (IOException e) {
            throw DiskTrouble.refused(disk, "could not be made", elsewhere, "the journal stays where it is", e);
        }
        try {
            file.close();
        } catch (IOException e) {
            problems.addAll(DiskTrouble.refused(disk, "could not be closed", file.path(), "entries recorded there stay", e).problems());
        }
        file = next;
    }

    /** All entries, those just appended too, in the order of their sequence. */
    public synchronized List<Entry> entries() {
        return Collections.unmodifiableList(new ArrayList<>(entries));
    }

    /** The last entry; there is always one. */
    public synchronized Entry lastEntry() {
        return entries.get(entries.size() - 1);
    }

    /** What was wrong with the file when it was opened, and what has gone wrong since without losing anything. */
    public synchronized List<Problem> problems() {
        List<Problem> all = new ArrayList<>(problems);
        file.headTrouble().ifPresent(e -> all.addAll(DiskTrouble.refused(disk, "could not be written", Head.path(file.path()),
                "all entries are recorded, but a journal cut short later may not be noticed", e).problems()));
        return all;
    }

    /** The entry whose append failed last and that is not recorded. */
    public synchronized Optional<Entry> pending() {
        return pending;
    }

    /** The file now written to. */
    public synchronized Path path() {
        return file.path();
    }

    /** Closes the file; every entry is on the medium already. */
    @Override
    public synchronized void close() {
        try {
            file.close();
        } catch (IOException e) {
            throw DiskTrouble.refused(disk, "could not be closed", file.path(), "all entries are recorded", e);
        }
    }
}
