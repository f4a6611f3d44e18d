package coldproof.reason.limiter;

/** What was found to hold a device back under a condition. */
public enum Limiter {
    /** The die's temperature limit. */
    HEAT("heat"),
    /** The limit of package power. */
    POWER("power"),
    /** The clock ceiling. */
    CLOCK("clock"),
    /** Adapter or battery. */
    SUPPLY("supply"),
    /** The workload itself. */
    WORKLOAD("workload"),
    /** Two in turn, each for a good part of the time. */
    MIXED("mixed"),
    /** The data cannot tell. */
    UNCLEAR("unclear");

    private final String word;

    Limiter(String word) {
        this.word = word;
    }

    /** One word. */
    public String word() {
        return word;
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
