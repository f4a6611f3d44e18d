package coldproof.files.journal;

import coldproof.quantity.Refused;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;

/** Reads a journal file without changing it. Never fails on what the file holds: damage is part of the {@link Reading}. */
public final class JournalReader {
    private JournalReader() {}

    /**
     * Reads a journal from this computer's disk.
     *
     * @throws Refused if the file is not there or the system does not let it be read
     */
    public static Reading read(Path path) {
        return read(new SystemDisk(), path);
    }

    /**
     * Reads a journal.
     *
     * @throws Refused if the file is not there or the system does not let it be read
     */
    public static Reading read(Disk disk, Path path) {
        try {
            Optional<Head> head = Head.read(disk, path); // before the journal: a process that writes now moves the head after the journal
            return of(path.getFileName().toString(), disk.read(path), head);
        } catch (IOException e) {
            throw DiskTrouble.refused(disk, "could not be read", path, "nothing was changed", e);
        }
    }

    /** Reads the bytes of a journal; the name is for messages. */
    static Reading of(String name, byte[] bytes, Optional<Head> head) {
        return new Reading(name, bytes, new LineScan(bytes, EitherForm::new), head);
    }
}
