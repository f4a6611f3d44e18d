package coldproof.plan;

import coldproof.quantity.ConstantWord;

/** What the study sets out to show. */
public enum Claim {
    /** That the change brings a gain. */
    GAIN,
    /** That the change makes no difference that matters (equivalence). */
    SAME;

    /** As written in plans and options. */
    public String word() {
        return ConstantWord.of(this);
    }
}
