package coldproof.reason.limiter;

/** What may hold a device back. */
public enum Hypothesis {
    /** The die is at the temperature the firmware will not exceed. */
    HEAT("heat", "the die's temperature limit"),
    /** Package power is at the limit of the firmware: long-term after a boost. */
    POWER("power", "the limit of package power"),
    /** The clock is at its ceiling. */
    CLOCK("clock", "the clock ceiling"),
    /** The adapter or the battery gives no more. */
    SUPPLY("supply", "what the adapter or battery gives"),
    /** The work waits for something else, or does not follow the clock. */
    WORKLOAD("workload", "the workload itself");

    private final String word;
    private final String phrase;

    Hypothesis(String word, String phrase) {
        this.word = word;
        this.phrase = phrase;
    }

    /** One word. */
    public String word() {
        return word;
    }

    /** What it is, to stand in a sentence. */
    public String phrase() {
        return phrase;
    }
}
