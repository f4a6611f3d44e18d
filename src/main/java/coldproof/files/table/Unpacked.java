package coldproof.files.table;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.zip.GZIPInputStream;

/** The bytes of a file, or those that a gzip file (RFC 1952) holds; told apart by their first two bytes, whatever the name says. */
final class Unpacked {
    private static final byte[] PACKED = {0x1f, (byte) 0x8b};
    private static final int BUFFER = 1 << 16;

    private Unpacked() {}

    /**
     * Opens a file.
     *
     * @throws java.util.zip.ZipException if it is packed and damaged; reading may throw it too
     * @throws java.io.EOFException if it is packed and cut short; reading may throw it too
     */
    static InputStream open(Path file) throws IOException {
        InputStream raw = new BufferedInputStream(Files.newInputStream(file), BUFFER);
        try {
            raw.mark(PACKED.length);
            byte[] first = raw.readNBytes(PACKED.length);
            raw.reset();
            return Arrays.equals(first, PACKED) ? new BufferedInputStream(new GZIPInputStream(raw, BUFFER), BUFFER) : raw;
        } catch (IOException e) {
            raw.close();
            throw e;
        }
    }
}
