package coldproof.stats.sequential;

import coldproof.stats.Argument;
import coldproof.stats.distribution.Normal;
import coldproof.stats.distribution.Root;

/**
 * What looking early costs and saves, by normal theory: how much larger the study must be at most, and how large it is on average.
 *
 * @param boundary bounds of all looks, the last at the full information
 * @param drift mean of the last normal deviate under the effect the study is sized for
 * @param power probability of stopping on the right side under that effect
 * @param inflation largest size over the size of a study without looks of the same power, 1 or more
 */
public record SequentialDesign(SequentialBoundary boundary, double drift, double power, double inflation) {
    /**
     * The design with a power.
     *
     * @param boundary bounds of all looks, the last at information fraction 1
     * @param power wanted, above the false-alarm rate of a side and below 1; only stopping on the right side counts
     * @throws IllegalArgumentException if the power is out of range or the last look is not at the full information
     */
    public static SequentialDesign ofPower(SequentialBoundary boundary, double power) {
        double perSide = boundary.tail().perSide(boundary.spent(boundary.looks() - 1));
        Argument.between("power", power, perSide, 1);
        if (boundary.fraction(boundary.looks() - 1) != 1) {
            throw new IllegalArgumentException("the last look is at " + boundary.fraction(boundary.looks() - 1) + " of the information, not at all of it");
        }
        double fixed = Normal.upperPoint(perSide) + Normal.quantile(power);
        double drift = Root.ofRising(d -> power(boundary, d) - power, fixed, 0.1);
        return new SequentialDesign(boundary, drift, power, (drift / fixed) * (drift / fixed));
    }

    /** Probability of stopping on the upper side with a drift. */
    public static double power(SequentialBoundary boundary, double drift) {
        double sum = 0;
        for (double each : boundary.crossedAbove(drift)) {
            sum += each;
        }
        return sum;
    }

    /**
     * Mean size as a share of the largest size.
     *
     * @param effectShare true effect over the one the study is sized for: 0 is none, 1 that effect
     * @return in (0, 1]
     */
    public double expectedShare(double effectShare) {
        double[] stopped = boundary.stopped(effectShare * drift);
        double mean = 0;
        double going = 1;
        for (int k = 0; k < stopped.length - 1; k++) {
            mean += stopped[k] * boundary.fraction(k);
            going -= stopped[k];
        }
        return mean + going * boundary.fraction(stopped.length - 1);
    }
}
