package coldproof.reason.limiter;

import coldproof.quantity.ConstantWord;

/** What may hold a device back. */
public enum Hypothesis {
    /** The die is at the temperature the firmware will not exceed. */
    HEAT("the die's temperature limit"),
    /** Package power is at the limit of the firmware: long-term after a boost. */
    POWER("the limit of package power"),
    /** The clock is at its ceiling. */
    CLOCK("the clock ceiling"),
    /** The adapter or the battery gives no more. */
    SUPPLY("what the adapter or battery gives"),
    /** The work waits for something else, or does not follow the clock. */
    WORKLOAD("the workload itself");

    private final String phrase;

    Hypothesis(String phrase) {
        this.phrase = phrase;
    }

    /** One word. */
    public String word() {
        return ConstantWord.of(this);
    }

    /** What it is, to stand in a sentence. */
    public String phrase() {
        return phrase;
    }
}
