package coldproof.reason.verdict;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One of several changes judged together, or the only one.
 *
 * @param question what was asked
 * @param verdict the answer; its intervals hold for all changes at once, and at all looks
 * @param adjustedP p value adjusted for all changes, where there is a test
 * @param adjustment by what, in words
 * @param looks what looking early did to it, where the plan has looks before the end
 */
public record Compared(Question question, Verdict verdict, OptionalDouble adjustedP, String adjustment, Optional<LookReport> looks) {
    /** Judged once, at the end. */
    public Compared(Question question, Verdict verdict, OptionalDouble adjustedP, String adjustment) {
        this(question, verdict, adjustedP, adjustment, Optional.empty());
    }

    Compared with(LookReport report) {
        return new Compared(question, verdict, adjustedP, adjustment, Optional.of(report));
    }
}
