package coldproof.files.journal;

import java.io.Closeable;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.util.List;

/**
 * The few things a journal asks of a file system. {@link SystemDisk} is the real one; tests use a strict fake that can fail at any call and
 * forgets what was not forced. Every method throws {@code IOException} when the system refuses.
 */
public interface Disk {
    /** Whether there is a file or folder of this name. */
    boolean exists(Path path) throws IOException;

    /** The whole content. */
    byte[] read(Path file) throws IOException;

    /** Opens a file that exists, for writing. */
    OpenFile open(Path file) throws IOException;

    /** Makes a new file and opens it for writing; fails if the name is taken. */
    OpenFile create(Path file) throws IOException;

    /** Makes a folder with its parents, if it is not there. */
    void createFolder(Path folder) throws IOException;

    /** Gives a file another name, which replaces a file of that name in one step. */
    void rename(Path from, Path to) throws IOException;

    /** Makes the names in a folder durable. */
    void forceFolder(Path folder) throws IOException;

    /** Names of the files in a folder, in the order of their characters. */
    List<String> list(Path folder) throws IOException;

    /** Bytes that may still be written where this file or folder is. */
    long usableBytes(Path path) throws IOException;

    /** A file open for writing. */
    interface OpenFile extends Closeable {
        /** Length, bytes. */
        long length() throws IOException;

        /** Writes all remaining bytes at this place. */
        void write(long at, ByteBuffer bytes) throws IOException;

        /** Cuts the file to this length, if it is longer. */
        void truncate(long length) throws IOException;

        /** Returns when content and length are on the medium. */
        void force() throws IOException;

        /** Whether the name it was opened by still leads to this very file. */
        boolean isStillNamed() throws IOException;
    }
}
