package coldproof.face.console;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/** File names to offer while one is being typed. */
final class FileNames {
    private static final int MOST = 500;

    private FileNames() {}

    /** Names that go on from what is typed, folders with a slash behind; none where the folder cannot be read. */
    static List<String> from(String typed) {
        int slash = Math.max(typed.lastIndexOf('/'), typed.lastIndexOf('\\'));
        String folder = slash < 0 ? "" : typed.substring(0, slash + 1);
        try (Stream<Path> children = Files.list(Path.of(folder.isEmpty() ? "." : folder))) {
            return children.limit(MOST).map(child -> folder + child.getFileName() + (Files.isDirectory(child) ? "/" : "")).sorted().toList();
        } catch (IOException | UncheckedIOException | InvalidPathException unreadable) {
            return List.of(); // nothing to offer; the verb itself says what is wrong with the name
        }
    }
}
