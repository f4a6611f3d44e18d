package coldproof.study;

/**
 * A trial of the run sheet was left out.
 *
 * @param position place in the run sheet, first is 1
 * @param reason why, never blank
 */
public record TrialSkipped(int position, String reason) implements Event {
    /** Refuses a position below 1 and a blank reason. */
    public TrialSkipped {
        Values.atLeast("position", position, 1);
        Values.word("reason", reason);
    }

    @Override
    public EventKind kind() {
        return EventKind.TRIAL_SKIPPED;
    }
}
