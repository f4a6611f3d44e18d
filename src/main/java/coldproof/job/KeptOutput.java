package coldproof.job;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** What a workload wrote in a run that gave no trial, kept for whoever wants to see why; a run may have taken an hour. */
final class KeptOutput {
    private KeptOutput() {}

    /**
     * Keeps it in the study.
     *
     * @param name file, relative to the study; one that is there is written over
     * @return a sentence that says where it is; empty where a message shows all of it anyway
     */
    static String keep(Path folder, String name, String output) {
        if (output.strip().indexOf('\n') < 0) {
            return "";
        }
        try {
            Files.createDirectories(folder.resolve(name).getParent());
            Files.write(folder.resolve(name), output.getBytes(StandardCharsets.UTF_8));
            return " What it wrote is in " + name + ".";
        } catch (IOException full) {
            return " What it wrote could not be kept (" + full.getMessage() + ").";
        }
    }
}
