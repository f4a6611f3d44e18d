package coldproof.physics;

/**
 * How fast a body follows its surroundings: the time in which a temperature difference shrinks to 1/e, with an interval.
 *
 * @param lowSeconds short end, above 0
 * @param likelySeconds best estimate, from {@code lowSeconds} to {@code highSeconds}
 * @param highSeconds long end, finite
 * @param measured whether it comes from a measured cool-down of this device; else it is typical of the class of device
 */
public record TimeConstant(double lowSeconds, double likelySeconds, double highSeconds, boolean measured) {
    /** Refuses ends in the wrong order and NaN. */
    public TimeConstant {
        Bounds.positive("low time constant", lowSeconds, "s");
        Bounds.within("high time constant", highSeconds, lowSeconds, Double.MAX_VALUE, "s");
        Bounds.within("likely time constant", likelySeconds, lowSeconds, highSeconds, "s");
    }
}
