package coldproof.reason.safety;

/**
 * A reading that was accepted but is hard to believe.
 *
 * @param reading which
 * @param text what is odd and what may have happened
 */
public record Doubt(Reading reading, String text) {}
