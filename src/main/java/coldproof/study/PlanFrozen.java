package coldproof.study;

import java.util.Optional;

/**
 * The plan was fixed before data were taken.
 *
 * @param digest digest of the plan file, lower-case hexadecimal
 * @param planText the plan file itself, so that the journal alone can show what was decided
 */
public record PlanFrozen(String digest, Optional<String> planText) implements Event {
    /** Refuses a blank digest. */
    public PlanFrozen {
        Values.word("digest", digest);
        Values.present("planText", planText);
    }

    @Override
    public EventKind kind() {
        return EventKind.PLAN_FROZEN;
    }
}
