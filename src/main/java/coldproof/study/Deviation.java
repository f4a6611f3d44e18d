package coldproof.study;

/**
 * One way in which the study left its frozen plan, or in which its data were touched after the fact; noted by the person or seen in the
 * entries themselves. Verdict and report name them all.
 *
 * @param sequence the entry at which it shows
 * @param code a fixed word for programs; the constants here are those that coldproof itself gives
 * @param text one sentence for people
 */
public record Deviation(long sequence, String code, String text) {
    /** The plan was changed after freezing. */
    public static final String PLAN_AMENDED = "plan-amended";
    /** A start condition did not hold. */
    public static final String START_CONDITION = "start-condition";
    /** A trial was left out. */
    public static final String TRIAL_SKIPPED = "trial-skipped";
    /** A trial or a skip was taken back. */
    public static final String UNDONE = "undone";
    /** A score was corrected. */
    public static final String SCORE_CORRECTED = "score-corrected";
    /** A trial was run before one that the run sheet has earlier. */
    public static final String OUT_OF_ORDER = "out-of-order";
    /** A session was broken off for good. */
    public static final String SESSION_ABORTED = "session-aborted";
    /** A safety rule was set aside. */
    public static final String RULE_LOOSENED = "rule-loosened";
    /** The results were looked at before the end, where the plan has no look. */
    public static final String UNPLANNED_LOOK = "unplanned-look";
}
