package coldproof.files.folder;

import coldproof.files.journal.DiskTrouble;
import coldproof.files.journal.SystemDisk;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import java.io.Closeable;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;

/**
 * Keeps a study to one writing process. The lock is the operating system's, on a byte far behind the content of a small file, so that it
 * opens by itself when its holder ends in any way, and so that others can read who holds it. The file stays: its presence means nothing.
 */
final class StudyLock implements Closeable {
    /** Windows forbids reading locked bytes: the locked one is far behind those that say who holds it. */
    private static final long LOCKED_BYTE = 1L << 40;
    private static final int LONGEST_WORDS = 200;
    private final FileChannel channel;
    private final FileLock lock;

    private StudyLock(FileChannel channel, FileLock lock) {
        this.channel = channel;
        this.lock = lock;
    }

    /**
     * Takes the lock.
     *
     * @throws Refused if another process holds it (the problem says which, and since when) or the file cannot be made
     */
    static StudyLock take(Path file, long processId, OffsetDateTime now) {
        FileChannel channel;
        try {
            channel = FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE);
        } catch (IOException e) {
            throw DiskTrouble.refused(new SystemDisk(), "could not be opened, so the study cannot be written to", file,
                    "nothing was changed", e);
        }
        try {
            FileLock lock = channel.tryLock(LOCKED_BYTE, 1, false);
            if (lock == null) {
                throw held(file, words(channel));
            }
            sign(channel, processId, now);
            return new StudyLock(channel, lock);
        } catch (OverlappingFileLockException e) {
            Refused refused = held(file, "this process");
            refused.initCause(e);
            throw closed(channel, refused);
        } catch (IOException e) {
            throw closed(channel, DiskTrouble.refused(new SystemDisk(), "could not be locked, so the study cannot be written to", file,
                    "nothing was changed", e));
        } catch (Refused e) {
            throw closed(channel, e);
        }
    }

    private static Refused closed(FileChannel channel, Refused refused) {
        try {
            channel.close();
        } catch (IOException e) {
            refused.addSuppressed(e);
        }
        return refused;
    }

    private static Refused held(Path file, String holder) {
        Path folder = file.toAbsolutePath().getParent();
        return new Refused(Problem.of("this study is open in another process: " + holder, Place.named(folder.toString()),
                "one process at a time; nothing was changed", "end that one first, or look without writing"));
    }

    private static void sign(FileChannel channel, long processId, OffsetDateTime now) throws IOException {
        String words = "process " + processId + " since " + DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(now.withNano(0)) + "\n";
        channel.truncate(0);
        channel.write(ByteBuffer.wrap(words.getBytes(StandardCharsets.US_ASCII)), 0);
    }

    /** What the holder wrote, made harmless; a holder that has only just begun may not have written yet. */
    private static String words(FileChannel channel) throws IOException {
        ByteBuffer buffer = ByteBuffer.allocate(LONGEST_WORDS);
        channel.read(buffer, 0);
        StringBuilder words = new StringBuilder();
        for (int i = 0; i < buffer.position(); i++) {
            char c = (char) buffer.get(i);
            if (c >= ' ' && c < 0x7f) {
                words.append(c);
            }
        }
        return words.length() == 0 ? "a process that has just begun" : words.toString();
    }

    @Override
    public void close() throws IOException {
        try (channel) {
            lock.release();
        }
    }
}
