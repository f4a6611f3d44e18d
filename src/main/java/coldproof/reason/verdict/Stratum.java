package coldproof.reason.verdict;

/** What the change is tested against. */
public enum Stratum {
    /** The spread of session means: the factor was set once a session. */
    BETWEEN_SESSIONS("between sessions"),
    /** The spread of trials inside sessions: the factor was set anew for each trial. */
    WITHIN_SESSIONS("within sessions"),
    /** The spread of differences inside pairs. */
    PAIRS("pairs"),
    /** The spread of independent trials. */
    TRIALS("trials");

    private final String words;

    Stratum(String words) {
        this.words = words;
    }

    /** As scripts and people read it. */
    public String words() {
        return words;
    }
}
