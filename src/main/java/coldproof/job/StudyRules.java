package coldproof.job;

import coldproof.files.journal.DiskTrouble;
import coldproof.files.rules.StudySafetyReader;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import coldproof.reason.safety.Condition;
import coldproof.reason.safety.Reading;
import coldproof.reason.safety.RuleChange;
import coldproof.reason.safety.SafetyRule;
import coldproof.reason.safety.StudySafety;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The safety rules of a study: those that come with coldproof, with what the study's safety.yaml changes. */
public final class StudyRules {
    /** The name of the file in a study folder. */
    public static final String NAME = "safety.yaml";
    private static final String CHARGING = "charge-frozen-cell";
    private static final long LARGEST_BYTES = 1L << 20;

    private StudyRules() {}

    /**
     * The rules in force for a study: those of its folder, and no charging below the cell temperature that its plan forbids.
     *
     * @throws Refused if its safety.yaml is wrong or cannot be read
     */
    public static StudySafety of(StudyView view) {
        StudySafety safety = of(view.folder());
        OptionalDouble limit = view.plan().abort().cellBelowCelsiusWhileCharging();
        if (limit.isEmpty()) {
            return safety;
        }
        RuleChange change = new RuleChange(Optional.empty(),
                List.of(new Condition.Range(Reading.COLDEST_CELL, Double.NEGATIVE_INFINITY, false, limit.getAsDouble(), false)));
        List<SafetyRule> rules = safety.rules().stream().map(rule -> rule.id().equals(CHARGING) && change.tightens(rule) ? change.of(rule) : rule).toList();
        return new StudySafety(rules, safety.loosened(), safety.device(), safety.site(), safety.known());
    }

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
            throw new Refused(Problem.of("the study's safety rules cannot be read: " + DiskTrouble.reason(failed), Place.named(file.toString()),
                    "a readable file in UTF-8", "Check the file; nothing is judged without it."));
        }
    }
}
