package coldproof.plan;

import coldproof.quantity.ConstantWord;

/** Which way of a metric is the good one. */
public enum Better {
    /** A rate: more is better. */
    HIGHER,
    /** A time or an energy: less is better. */
    LOWER;

    /** As written in plans and options. */
    public String word() {
        return ConstantWord.of(this);
    }

    /** The sign that makes a log change positive when things got better: 1 or -1. */
    public int sign() {
        return this == HIGHER ? 1 : -1;
    }
}
