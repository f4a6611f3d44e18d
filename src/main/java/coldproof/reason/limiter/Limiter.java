package coldproof.reason.limiter;

import coldproof.quantity.ConstantWord;

/** What was found to hold a device back under a condition. */
public enum Limiter {
    /** The die's temperature limit. */
    HEAT,
    /** The limit of package power. */
    POWER,
    /** The clock ceiling. */
    CLOCK,
    /** Adapter or battery. */
    SUPPLY,
    /** The workload itself. */
    WORKLOAD,
    /** Two in turn, each for a good part of the time. */
    MIXED,
    /** The data cannot tell. */
    UNCLEAR;

    /** One word. */
    public String word() {
        return ConstantWord.of(this);
    }

    static Limiter of(Hypothesis hypothesis) {
        return switch (hypothesis) {
            case HEAT -> HEAT;
            case POWER -> POWER;
            case CLOCK -> CLOCK;
            case SUPPLY -> SUPPLY;
            case WORKLOAD -> WORKLOAD;
        };
    }
}
