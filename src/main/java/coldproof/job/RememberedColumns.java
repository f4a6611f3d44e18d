package coldproof.job;

import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/** Remembers in a study which column of its logs is which channel, in {@code traces/columns.txt}: a line {@code channel=column} each. */
final class RememberedColumns {
    private static final String FILE = "traces/columns.txt";

    private RememberedColumns() {}

    /** What was remembered; nothing when nothing was set. Blank lines and lines that begin with {@code #} are left out. */
    static List<String> remembered(Path study) {
        Path file = study.resolve(FILE);
        if (!Files.exists(file)) {
            return List.of();
        }
        return TextFile.read(file, "the columns of the logs").lines().map(String::strip).filter(line -> !line.isEmpty() && !line.startsWith("#")).toList();
    }

    /**
     * Reads a log by the remembered columns.
     *
     * @throws Refused as the reading does; where the remembered columns are the reason it is said so
     */
    static <R> R reading(Path study, Function<List<String>, R> reading) {
        List<String> remembered = remembered(study);
        try {
            return reading.apply(remembered);
        } catch (Refused refused) {
            if (remembered.isEmpty() || refused.problems().stream().noneMatch(problem -> problem.where().text().equals(TraceJob.MAP_OPTION))) {
                throw refused;
            }
            List<Problem> problems = new ArrayList<>(refused.problems());
            problems.add(Problem.of("the log was read by the columns remembered here: " + String.join(", ", remembered), Place.named(study.resolve(FILE).toString()),
                    "columns of this log", "Give --map, or correct this file."));
            throw new Refused(problems);
        }
    }

    /**
     * Remembers mappings that have proved themselves; replaces earlier ones.
     *
     * @throws Refused if the file cannot be written
     */
    static void remember(Path study, List<String> mappings) {
        Path file = study.resolve(FILE);
        try {
            Files.createDirectories(file.getParent());
            Files.writeString(file, "# Which column of the logs is which channel, as set with --map. The rest is found from names and values.\n"
                    + String.join("\n", mappings) + "\n");
        } catch (IOException failed) {
            throw new Refused(Problem.of("the columns cannot be remembered: " + failed.getMessage(), Place.named(file.toString()), "a file that can be written",
                    "Free the folder, or give --map with every call."));
        }
    }
}
