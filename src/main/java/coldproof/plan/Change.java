package coldproof.plan;

/** How often a factor is set. */
public enum Change {
    /** Hard to change: once for a whole session, such as the air outdoors. */
    PER_SESSION("per session"),
    /** Easy to change: anew for every trial, such as a fan setting. */
    PER_TRIAL("per trial");

    private final String word;

    Change(String word) {
        this.word = word;
    }

    /** As written in plans. */
    public String word() {
        return word;
    }
}
