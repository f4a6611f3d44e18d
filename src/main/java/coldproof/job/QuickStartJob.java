package coldproof.job;

import coldproof.machine.ClassArchive;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;

/** Makes starting quick again after the program's folder was moved or Java changed. */
public final class QuickStartJob {
    private QuickStartJob() {}

    /**
     * What was made.
     *
     * @param archive where the archive lies
     * @param outcome whether this Java made one
     */
    public record Made(Path archive, ClassArchive.Outcome outcome) {
        /** Whether the archive is there. */
        public boolean isMade() {
            return outcome == ClassArchive.Outcome.MADE;
        }
    }

    /**
     * Makes the archive of classes anew.
     *
     * @param walk words of the call that walks the usual paths
     * @throws Refused if the program does not run from its packaged folder, or that folder cannot be written
     */
    public static Made make(List<String> walk) {
        Path jar = ClassArchive.jar().orElseThrow(() -> new Refused(Problem.of("the program runs from loose classes, which have no archive",
                Place.named("coldproof warm"), "the packaged folder", "Start it with bin/coldproof of that folder.")));
        try {
            return new Made(ClassArchive.beside(jar), ClassArchive.make(jar, walk));
        } catch (IOException trouble) {
            Refused refused = new Refused(Problem.of("the archive of classes could not be written: " + trouble.getMessage(),
                    Place.named(ClassArchive.beside(jar).toString()), "a folder that you may write", "Call it as the owner of the folder. Everything works without, only slower to start."));
            refused.initCause(trouble);
            throw refused;
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while the archive was made", interrupted);
        }
    }
}
