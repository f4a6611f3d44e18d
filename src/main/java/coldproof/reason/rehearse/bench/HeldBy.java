package coldproof.reason.rehearse.bench;

/** What truly held the rate back at a moment. */
public enum HeldBy {
    /** The die's temperature limit. */
    HEAT,
    /** The long- or short-term limit of package power. */
    POWER,
    /** The clock ceiling. */
    CLOCK,
    /** What the adapter or the battery gives. */
    SUPPLY,
    /** The workload itself: its rate is capped by something other than the processor. */
    WORKLOAD
}
