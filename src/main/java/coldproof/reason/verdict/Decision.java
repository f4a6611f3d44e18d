package coldproof.reason.verdict;

import coldproof.quantity.ConstantWord;

/** What became of the claim. */
public enum Decision {
    /** The claim holds. */
    PASS,
    /** The claim does not hold. */
    FAIL,
    /** The data do not tell. */
    UNDECIDED;

    /** As scripts read it. */
    public String code() {
        return ConstantWord.of(this);
    }

    /** As people read it. */
    public String words() {
        return name();
    }
}
