package coldproof.study;

/**
 * The score of an earlier trial was wrong; both scores stay on record.
 *
 * @param sequence the entry of the trial, 1 or more
 * @param score the right score in the same unit, finite
 * @param reason why, never blank
 */
public record TrialCorrected(long sequence, double score, String reason) implements Event {
    /** Refuses a sequence below 1, a score that is not finite and a blank reason. */
    public TrialCorrected {
        Values.atLeast("sequence", sequence, 1);
        Values.finite("score", score);
        Values.word("reason", reason);
    }

    @Override
    public EventKind kind() {
        return EventKind.TRIAL_CORRECTED;
    }
}
