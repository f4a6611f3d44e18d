package coldproof.files.table;

import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import java.io.BufferedInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.zip.GZIPInputStream;
import java.util.zip.ZipException;

/** The bytes of a file, or those that a gzip file (RFC 1952) holds; told apart by their first two bytes, whatever the name says. */
final class Unpacked {
    private static final byte[] PACKED = {0x1f, (byte) 0x8b};
    private static final int BUFFER = 1 << 16;

    private Unpacked() {}

    /** Takes what is wanted from the bytes. */
    interface Reading<T> {
        T from(InputStream in) throws IOException;
    }

    /**
     * Reads a file.
     *
     * @param expected what it should be, as in "a log of telemetry"
     * @throws Refused if it is a folder, missing, or packed and damaged
     * @throws UncheckedIOException if reading fails for a reason outside the file
     */
    static <T> T read(Path file, String expected, Reading<T> reading) {
        if (Files.isDirectory(file)) {
            throw refuse(file, "is a folder", expected, "Name the file inside it.");
        }
        try (InputStream raw = new BufferedInputStream(Files.newInputStream(file), BUFFER)) {
            raw.mark(PACKED.length);
            byte[] first = raw.readNBytes(PACKED.length);
            raw.reset();
            try (InputStream in = Arrays.equals(first, PACKED) ? new BufferedInputStream(new GZIPInputStream(raw, BUFFER), BUFFER) : raw) {
                return reading.from(in);
            }
        } catch (NoSuchFileException missing) {
            throw refuse(file, "does not exist", expected, "Check the path; nothing was read.");
        } catch (ZipException | EOFException damaged) {
            throw refuse(file, "is packed and damaged: " + damaged.getMessage(), "a whole gzip file or plain text", "Unpack it by hand and give the text.");
        } catch (IOException failure) {
            throw new UncheckedIOException("reading " + file, failure);
        }
    }

    private static Refused refuse(Path file, String what, String expected, String remedy) {
        return new Refused(Problem.of(what, Place.named(file.toString()), expected, remedy));
    }
}
