package coldproof.files.folder;

import coldproof.files.journal.Disk;
import coldproof.files.journal.DiskTrouble;
import coldproof.files.journal.Journal;
import coldproof.files.journal.JournalClock;
import coldproof.files.journal.JournalReader;
import coldproof.files.journal.Reading;
import coldproof.files.journal.SystemDisk;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import coldproof.study.Entry;
import coldproof.study.Merging;
import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.List;

/** A study folder held open for writing: its journal, and the names of what else lies in it. */
public final class StudyFolder implements Closeable {
    private final Path folder;
    private final StudyLock lock;
    private final Journal journal;

    private StudyFolder(Path folder, StudyLock lock, Journal journal) {
        this.folder = folder;
        this.lock = lock;
        this.journal = journal;
    }

    /** The file with what was decided before. */
    public static Path plan(Path folder) {
        return folder.resolve("plan.yaml");
    }

    /** The file with every event. */
    public static Path journal(Path folder) {
        return folder.resolve("journal.jsonl");
    }

    /** The folder with telemetry as imported. */
    public static Path traces(Path folder) {
        return folder.resolve("traces");
    }

    /** The page made by the report. */
    public static Path report(Path folder) {
        return folder.resolve("report.html");
    }

    static Path lock(Path folder) {
        return folder.resolve("journal.lock");
    }

    /** Whether a journal lies in this folder. */
    public static boolean hasJournal(Path folder) {
        return Files.exists(journal(folder));
    }

    /**
     * Makes a study in a folder, which is made too if it is not there. Other files in it, such as a plan, stay.
     *
     * @throws Refused if there is a journal already, or the folder cannot be written to
     */
    public static StudyFolder create(Path folder, JournalClock clock) {
        if (hasJournal(folder)) {
            throw new Refused(Problem.of("there is a study in this folder already", Place.named(folder.toString()),
                    "a folder without journal.jsonl; nothing was changed", "give another folder, or go on with the study that is there"));
        }
        Disk disk = new SystemDisk();
        try {
            disk.createFolder(traces(folder));
            disk.forceFolder(folder);
        } catch (IOException e) {
            throw DiskTrouble.refused(disk, "could not be made", folder, "nothing was changed", e);
        }
        return open(folder, clock);
    }

    /**
     * Opens the study in a folder for writing; a folder without journal gets one.
     *
     * @throws Refused if the folder is not there, another process has the study open, or the journal cannot be opened
     */
    public static StudyFolder open(Path folder, JournalClock clock) {
        if (!Files.isDirectory(folder)) {
            throw new Refused(Problem.of("there is no such folder", Place.named(folder.toString()), "the folder of a study",
                    "check the name, or make a study there first"));
        }
        StudyLock lock = StudyLock.take(lock(folder), ProcessHandle.current().pid(), OffsetDateTime.now(clock.wall()));
        try {
            return new StudyFolder(folder, lock, Journal.open(new SystemDisk(), journal(folder), clock));
        } catch (Refused e) {
            release(lock, e);
            throw e;
        }
    }

    /**
     * Opens a study whose folder cannot be written to, such as one on a read-only medium; entries go into a file elsewhere, beside which
     * the lock is.
     *
     * @throws Refused if there is no journal to go on from, another process writes that file, or it cannot be written or is none that goes on
     */
    public static StudyFolder openElsewhere(Path folder, Path elsewhere, JournalClock clock) {
        Reading base = read(folder);
        Path lockFile = elsewhere.resolveSibling(elsewhere.getFileName() + ".lock");
        StudyLock lock = StudyLock.take(lockFile, ProcessHandle.current().pid(), OffsetDateTime.now(clock.wall()));
        try {
            return new StudyFolder(folder, lock, Journal.openElsewhere(new SystemDisk(), base, elsewhere, clock));
        } catch (Refused e) {
            release(lock, e);
            throw e;
        }
    }

    private static void release(StudyLock lock, Refused because) {
        try {
            lock.close();
        } catch (IOException e) {
            because.addSuppressed(e);
        }
    }

    /**
     * Reads the journal in a folder without opening it for writing; works while another process writes, and on a read-only medium.
     *
     * @throws Refused if there is no journal or it cannot be read
     */
    public static Reading read(Path folder) {
        if (!hasJournal(folder)) {
            throw new Refused(Problem.of("there is no journal in this folder", Place.named(journal(folder).toString()),
                    "a folder with journal.jsonl", "Name the folder of a study with --study DIR, or record something first."));
        }
        return JournalReader.read(journal(folder));
    }

    /**
     * Whether a journal, such as one that went on elsewhere, holds entries that these are without.
     *
     * @throws Refused if it is there and cannot be read
     */
    public static boolean hasMore(Path journal, List<Entry> entries) {
        return Files.exists(journal) && Merging.merge(entries, JournalReader.read(journal).entries()).fromSecond() > 0;
    }

    /** The folder itself. */
    public Path path() {
        return folder;
    }

    /** The journal, open for writing. */
    public Journal journal() {
        return journal;
    }

    /** Closes the journal and lets others write. */
    @Override
    public void close() {
        try {
            journal.close();
        } finally {
            unlock(folder, lock);
        }
    }

    static void unlock(Path folder, StudyLock lock) {
        try {
            lock.close();
        } catch (IOException e) {
            throw DiskTrouble.refused(new SystemDisk(), "could not be unlocked", lock(folder), "all entries are recorded", e);
        }
    }
}
