package coldproof.study;

/**
 * An interim look at the data, which spends false-alarm probability.
 *
 * @param look number of the look, first is 1
 * @param statistic the test statistic, finite
 * @param bound the bound it was held against, finite
 * @param decision what followed, such as {@code go on} or {@code stop}
 */
public record LookTaken(int look, double statistic, double bound, String decision) implements Event {
    /** Refuses a look below 1, numbers that are not finite and a blank decision. */
    public LookTaken {
        Values.atLeast("look", look, 1);
        Values.finite("statistic", statistic);
        Values.finite("bound", bound);
        Values.word("decision", decision);
    }

    @Override
    public EventKind kind() {
        return EventKind.LOOK_TAKEN;
    }
}
