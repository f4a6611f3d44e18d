package coldproof.face.console;

import coldproof.job.StudyOverview;
import java.nio.file.Path;

/** A study that is read while the terminal is made ready: the two take about as long, and there is more than one processor. */
final class Opening {
    private final Path folder;
    private final Thread reader;
    private StudyOverview overview;
    private RuntimeException unforeseen;
    private Error exhausted;

    private Opening(Path folder) {
        this.folder = folder;
        this.reader = new Thread(this::read, "study");
        reader.setDaemon(true);
    }

    /** Begins to read the study of a folder. */
    static Opening of(Path folder) {
        Opening opening = new Opening(folder);
        opening.reader.start();
        return opening;
    }

    Path folder() {
        return folder;
    }

    private void read() {
        try {
            overview = StudyOverview.of(folder);
        } catch (RuntimeException e) {
            unforeseen = e;
        } catch (OutOfMemoryError | StackOverflowError e) {
            exhausted = e;
        }
    }

    /** What was found; waits until it is read. */
    StudyOverview overview() {
        try {
            reader.join();
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while the study was read", interrupted);
        }
        if (unforeseen != null) {
            throw unforeseen;
        }
        if (exhausted != null) {
            throw exhausted;
        }
        return overview;
    }
}
