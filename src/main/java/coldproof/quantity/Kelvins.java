package coldproof.quantity;

/**
 * A difference of two temperatures.
 *
 * @param difference in K, finite, of either sign
 */
public record Kelvins(double difference) {
    /** Refuses NaN and infinity. */
    public Kelvins {
        if (!Double.isFinite(difference)) {
            throw new IllegalArgumentException("a temperature difference must be finite, not " + difference + " K");
        }
    }
}
