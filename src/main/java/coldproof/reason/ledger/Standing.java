package coldproof.reason.ledger;

import coldproof.quantity.Interval;
import coldproof.quantity.LogRatio;
import coldproof.stats.interval.ConfidenceInterval;
import coldproof.stats.propagation.Combination;
import java.util.Optional;

/**
 * How a device stands against another: the logarithm of the ratio of their speeds, above 0 when it is the faster, whichever way the
 * workload counts.
 *
 * @param logSpeedRatio natural logarithm of the ratio
 * @param standardUncertainty of that logarithm; 0 for the reference itself
 * @param degreesOfFreedom effective ones, infinity allowed
 * @param interval of the logarithm; empty where an uncertainty is not stated
 * @param told whether the two can be told apart
 */
public record Standing(double logSpeedRatio, double standardUncertainty, double degreesOfFreedom, Optional<Interval> interval, Told told) {
    static Standing of(Combination ratio, boolean stated, double level) {
        if (!stated) {
            return new Standing(ratio.estimate(), ratio.standardUncertainty(), ratio.degreesOfFreedom(), Optional.empty(), Told.NOT_STATED);
        }
        ConfidenceInterval found = ratio.interval(level);
        Interval interval = new Interval(level, found.low(), found.high());
        Told told = interval.low() > 0 ? Told.FASTER : interval.high() < 0 ? Told.SLOWER : Told.CANNOT_TELL;
        return new Standing(ratio.estimate(), ratio.standardUncertainty(), ratio.degreesOfFreedom(), Optional.of(interval), told);
    }

    static Standing ofReference() {
        return new Standing(0, 0, Double.POSITIVE_INFINITY, Optional.empty(), Told.REFERENCE);
    }

    /** How much faster the device is than the other, percent of the other; below 0 when it is slower. */
    public double percentAgainstReference() {
        return LogRatio.toPercent(logSpeedRatio);
    }

    /** How much faster the other is than the device, percent of the device: not the same number with another sign. */
    public double percentOfReferenceAgainstIt() {
        return LogRatio.toPercent(-logSpeedRatio);
    }
}
