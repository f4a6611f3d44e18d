package coldproof.study;

import java.util.Optional;

/**
 * The plan was changed after it had been frozen: a deviation that every verdict names.
 *
 * @param digest digest of the plan file as amended
 * @param planText the amended plan file
 * @param reason why, in the words of the person
 */
public record PlanAmended(String digest, Optional<String> planText, String reason) implements Event {
    /** Refuses a blank digest or reason. */
    public PlanAmended {
        Values.word("digest", digest);
        Values.present("planText", planText);
        Values.word("reason", reason);
    }

    @Override
    public EventKind kind() {
        return EventKind.PLAN_AMENDED;
    }
}
