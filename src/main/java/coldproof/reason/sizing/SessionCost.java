package coldproof.reason.sizing;

/**
 * What one session of a level takes before its first trial.
 *
 * @param openingSeconds set-up and soak, s, 0 or more
 * @param outdoors whether the person stands outdoors for the whole session
 */
public record SessionCost(double openingSeconds, boolean outdoors) {
    /** Refuses a negative time. */
    public SessionCost {
        if (!(openingSeconds >= 0 && openingSeconds < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("opening a session takes 0 s or more, not " + openingSeconds + " s");
        }
    }
}
