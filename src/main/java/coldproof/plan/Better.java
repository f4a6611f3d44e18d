package coldproof.plan;

/** Which way of a metric is the good one. */
public enum Better {
    /** A rate: more is better. */
    HIGHER("higher"),
    /** A time or an energy: less is better. */
    LOWER("lower");

    private final String word;

    Better(String word) {
        this.word = word;
    }

    /** As written in plans and options. */
    public String word() {
        return word;
    }

    /** The sign that makes a log change positive when things got better: 1 or -1. */
    public int sign() {
        return this == HIGHER ? 1 : -1;
    }
}
