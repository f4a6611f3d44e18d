package coldproof.study;

/**
 * An earlier entry no longer counts: a trial, a skip, a correction, or another undo (which then counts again).
 *
 * @param sequence the entry taken back, 1 or more
 * @param reason why, may be empty
 */
public record TrialUndone(long sequence, String reason) implements Event {
    /** Refuses a sequence below 1. */
    public TrialUndone {
        Values.atLeast("sequence", sequence, 1);
        Values.text("reason", reason);
    }

    @Override
    public EventKind kind() {
        return EventKind.TRIAL_UNDONE;
    }
}
