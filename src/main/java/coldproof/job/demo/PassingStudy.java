package coldproof.job.demo;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.Optional;

/** The study of the demonstration under the folder for temporary files, gone when closed. */
public final class PassingStudy implements AutoCloseable {
    private final Path above;
    private final Path folder;

    private PassingStudy(Path above) {
        this.above = above;
        this.folder = DemoJob.make(Optional.of(above.resolve("study")));
    }

    /**
     * Makes it.
     *
     * @throws coldproof.quantity.Refused if the folder for temporary files cannot be written to
     */
    public static PassingStudy make() {
        try {
            return new PassingStudy(Files.createTempDirectory("coldproof"));
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    /** Where it is. */
    public Path folder() {
        return folder;
    }

    @Override
    public void close() {
        try {
            Files.walkFileTree(above, new SimpleFileVisitor<>() {
                @Override
                public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) throws IOException {
                    Files.delete(file);
                    return FileVisitResult.CONTINUE;
                }

                @Override
                public FileVisitResult postVisitDirectory(Path emptied, IOException trouble) throws IOException {
                    Files.delete(emptied);
                    return FileVisitResult.CONTINUE;
                }
            });
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }
}
