package coldproof.job;

import coldproof.files.rules.StudySafetyReader;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import coldproof.reason.safety.StudySafety;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** The safety rules of a study: those that come with coldproof, with what the study's safety.yaml changes. */
public final class StudyRules {
    /** The name of the file in a study folder. */
    public static final String NAME = "safety.yaml";
    private static final long LARGEST_BYTES = 1L << 20;

    private StudyRules() {}

    /**
     * The rules in force in a study folder.
     *
     * @throws Refused if its safety.yaml is wrong or cannot be read
     */
    public static StudySafety of(Path study) {
        Path file = study.resolve(NAME);
        if (!Files.exists(file)) {
            return StudySafety.unchanged(SafetyRules.bundled());
        }
        try {
            if (Files.size(file) > LARGEST_BYTES) {
                throw new Refused(Problem.of("the file is larger than any rules", Place.named(file.toString()), "at most 1 MiB", "Check that this is the right file."));
            }
            return StudySafetyReader.read(file.toString(), Files.readString(file, StandardCharsets.UTF_8), SafetyRules.bundled());
        } catch (IOException failed) {
            throw new Refused(Problem.of("the study's safety rules cannot be read: " + PlanJob.reason(failed), Place.named(file.toString()),
                    "a readable file in UTF-8", "Check the file; nothing is judged without it."));
        }
    }
}
