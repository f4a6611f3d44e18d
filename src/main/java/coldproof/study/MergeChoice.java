package coldproof.study;

import coldproof.quantity.ConstantWord;

/** Which copy's word counts where two copies of a journal say different things; the other's stays on record, taken back. */
public enum MergeChoice {
    /** None: a conflict stops the merge. */
    NEITHER,
    /** The first copy's. */
    FIRST,
    /** The second copy's. */
    SECOND;

    /** As written in options. */
    public String word() {
        return ConstantWord.of(this);
    }
}
