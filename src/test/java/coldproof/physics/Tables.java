package coldproof.physics;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** Reads the reference tables of this room: lines starting with # are their birth certificates. */
final class Tables {
    private Tables() {}

    /** All rows without comments, the heading first; empty cells stay. */
    static List<String[]> rows(String name) {
        try (InputStream in = Tables.class.getResourceAsStream("/coldproof/physics/" + name)) {
            String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            return text.lines().filter(line -> !line.startsWith("#") && !line.isBlank()).map(line -> line.split(",", -1)).toList();
        } catch (IOException e) {
            throw new UncheckedIOException(name, e);
        }
    }
}
