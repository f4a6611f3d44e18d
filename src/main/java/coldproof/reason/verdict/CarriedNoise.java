package coldproof.reason.verdict;

import coldproof.stats.distribution.CentralF;
import java.util.OptionalDouble;

/**
 * Noise from elsewhere that a verdict was judged by, beside the noise of the trials themselves.
 *
 * @param from where it comes from, in words
 * @param logSd its log standard deviation of one unit: a session mean, a trial, or half a pair
 * @param degreesOfFreedom behind it
 * @param ownLogSd the same of the trials themselves; empty where they have no degrees of freedom of their own
 * @param ownDegreesOfFreedom behind that, 0 where there are none
 */
public record CarriedNoise(String from, double logSd, double degreesOfFreedom, OptionalDouble ownLogSd, double ownDegreesOfFreedom) {
    /** The pooled variance of one unit: each weighs as its degrees of freedom. */
    double pooledVariance() {
        double own = ownLogSd.orElse(0);
        return (own * own * ownDegreesOfFreedom + logSd * logSd * degreesOfFreedom) / pooledDegreesOfFreedom();
    }

    double pooledDegreesOfFreedom() {
        return ownDegreesOfFreedom + degreesOfFreedom;
    }

    /** Own variance over carried-in variance; empty where there is no own one. */
    public OptionalDouble ratio() {
        return ownLogSd.isPresent() && logSd > 0 ? OptionalDouble.of(ownLogSd.getAsDouble() * ownLogSd.getAsDouble() / (logSd * logSd)) : OptionalDouble.empty();
    }

    /** Two-sided p of the F test that both are one noise; empty where there is no own one. */
    public OptionalDouble differenceP() {
        if (ratio().isEmpty() || ratio().getAsDouble() == 0) {
            return OptionalDouble.empty();
        }
        double upper = CentralF.survival(ratio().getAsDouble(), ownDegreesOfFreedom, degreesOfFreedom);
        return OptionalDouble.of(2 * Math.min(upper, 1 - upper));
    }
}
