package coldproof.study;

/** Which copy's word counts where two copies of a journal say different things; the other's stays on record, taken back. */
public enum MergeChoice {
    /** None: a conflict stops the merge. */
    NEITHER("neither"),
    /** The first copy's. */
    FIRST("first"),
    /** The second copy's. */
    SECOND("second");

    private final String word;

    MergeChoice(String word) {
        this.word = word;
    }

    /** As written in options. */
    public String word() {
        return word;
    }
}
