package coldproof.machine.sensors;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.OptionalLong;

/** Reads one value of a kernel file. */
final class KernelFile {
    private KernelFile() {}

    /** The whole number in a file; empty when it is not there, may not be read, is disabled, or holds no number. */
    static OptionalLong number(Path file) {
        try {
            return OptionalLong.of(Long.parseLong(Files.readString(file).strip()));
        } catch (IOException | NumberFormatException unreadable) {
            return OptionalLong.empty(); // a sensor that gives nothing now is a missing value, told by an empty cell
        }
    }

    /** The text in a file; empty when it cannot be read. */
    static String text(Path file) {
        try {
            return Files.readString(file).strip();
        } catch (IOException unreadable) {
            return ""; // names and labels are optional in these interfaces
        }
    }
}
