package coldproof.reason.verdict;

/** What became of the claim. */
public enum Decision {
    /** The claim holds. */
    PASS("pass", "PASS"),
    /** The claim does not hold. */
    FAIL("fail", "FAIL"),
    /** The data do not tell. */
    UNDECIDED("undecided", "UNDECIDED");

    private final String code;
    private final String words;

    Decision(String code, String words) {
        this.code = code;
        this.words = words;
    }

    /** As scripts read it. */
    public String code() {
        return code;
    }

    /** As people read it. */
    public String words() {
        return words;
    }
}
