package coldproof.job;

import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;

/** Reads a small text that a person wrote. */
final class TextFile {
    private static final long LARGEST_BYTES = 4L << 20;

    private TextFile() {}

    /**
     * The text of a file.
     *
     * @param what what it is, such as {@code the ledger}
     * @throws Refused if it is not there, cannot be read, is too large or is not UTF-8
     */
    static String read(Path file, String what) {
        try {
            if (Files.size(file) > LARGEST_BYTES) {
                throw refused(file, what + " is too large", "at most 4 MiB", "Check that this is the right file.", null);
            }
            return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(Files.readAllBytes(file))).toString();
        } catch (NoSuchFileException missing) {
            throw refused(file, "there is no such file", what, "Check the name.", missing);
        } catch (CharacterCodingException broken) {
            throw refused(file, what + " is not UTF-8 text", "UTF-8", "Save it as UTF-8.", broken);
        } catch (IOException failed) {
            throw refused(file, what + " cannot be read: " + failed.getMessage(), "a readable file", "Check the name and its permissions.", failed);
        }
    }

    private static Refused refused(Path file, String what, String expected, String remedy, IOException cause) {
        Refused refused = new Refused(Problem.of(what, Place.named(file.toString()), expected, remedy));
        if (cause != null) {
            refused.initCause(cause);
        }
        return refused;
    }
}
