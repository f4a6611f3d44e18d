package coldproof.study;

/**
 * The person stopped for a while within a session.
 *
 * @param reason why, may be empty
 */
public record Paused(String reason) implements Event {
    /** Refuses a missing reason. */
    public Paused {
        Values.text("reason", reason);
    }

    @Override
    public EventKind kind() {
        return EventKind.PAUSED;
    }
}
