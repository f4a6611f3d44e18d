package coldproof.plan;

/** What the study sets out to show. */
public enum Claim {
    /** That the change brings a gain. */
    GAIN("gain"),
    /** That the change makes no difference that matters (equivalence). */
    SAME("same");

    private final String word;

    Claim(String word) {
        this.word = word;
    }

    /** As written in plans and options. */
    public String word() {
        return word;
    }
}
