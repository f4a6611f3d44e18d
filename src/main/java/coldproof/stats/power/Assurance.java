package coldproof.stats.power;

import coldproof.stats.Argument;
import coldproof.stats.distribution.ChiMixture;
import java.util.function.DoubleUnaryOperator;

/**
 * Power averaged over what is not known about the noise.
 *
 * <p>A standard deviation estimated as {@code s} with {@code df} degrees of freedom leaves the true one with the chi-square posterior
 * {@code sigma = s / sqrt(chi-square / df)} (no prior knowledge of its logarithm). Assurance is the average of the power over that
 * distribution, by quadrature; it is below the power at {@code s} where that is high, and the difference is the price of a small pilot.
 *
 * @see "A. O'Hagan, J. W. Stevens, M. J. Campbell, Assurance in clinical trial design, Pharmaceutical Statistics 4 (2005) 187-201 (from
 *     memory)"
 */
public final class Assurance {
    private Assurance() {}

    /**
     * A standard deviation of log scores with what it rests on.
     *
     * @param logSd estimate, 0 or more, finite; one that came out as 0 stays 0, which is optimistic
     * @param degreesOfFreedom 1 or more; infinity where the true value is known
     */
    public record Estimate(double logSd, double degreesOfFreedom) {
        /** Refuses what is out of range. */
        public Estimate {
            Argument.within("log standard deviation", logSd, 0, Double.MAX_VALUE);
            Argument.within("degrees of freedom", degreesOfFreedom, 1, Double.POSITIVE_INFINITY);
        }

        /** Average of a function of the true standard deviation, given this estimate. */
        double average(DoubleUnaryOperator ofLogSd, double steepness) {
            if (logSd == 0 || degreesOfFreedom == Double.POSITIVE_INFINITY) {
                return ofLogSd.applyAsDouble(logSd);
            }
            return new ChiMixture(degreesOfFreedom).average(s -> ofLogSd.applyAsDouble(logSd / s), steepness);
        }
    }

    /**
     * Assurance of two groups of trials.
     *
     * @param noise run-to-run standard deviation, above 0
     * @throws IllegalArgumentException if an argument is out of range, or the allocation leaves no degree of freedom
     */
    public static double ofTwoGroups(Claim claim, Estimate noise, Allocation allocation) {
        return noise.average(logSd -> Power.of(claim, new Layout.TwoGroups(logSd), allocation),
                steepness(claim, new Layout.TwoGroups(noise.logSd()), allocation));
    }

    /**
     * Assurance of pairs of trials.
     *
     * @param noise standard deviation of the difference of a pair, above 0
     * @throws IllegalArgumentException if an argument is out of range, or the allocation leaves no degree of freedom
     */
    public static double ofPairs(Claim claim, Estimate noise, Allocation allocation) {
        return noise.average(logSd -> Power.of(claim, new Layout.Pairs(logSd), allocation),
                steepness(claim, new Layout.Pairs(noise.logSd()), allocation));
    }

    /**
     * Assurance of a factor that is set once per session; the two estimates are taken as independent.
     *
     * @param session session-to-session standard deviation
     * @param run run-to-run standard deviation; not both 0
     * @param trialsPerSession 1 or more
     * @throws IllegalArgumentException if an argument is out of range, or the allocation leaves no degree of freedom
     */
    public static double ofSessions(Claim claim, Estimate session, Estimate run, int trialsPerSession, Allocation allocation) {
        double steepness = steepness(claim, new Layout.Sessions(session.logSd(), run.logSd(), trialsPerSession), allocation);
        return session.average(sessionLogSd -> run.average(
                runLogSd -> Power.of(claim, new Layout.Sessions(sessionLogSd, runLogSd, trialsPerSession), allocation), steepness), steepness);
    }

    /**
     * Assurance of any comparison whose standard error is a multiple of one standard deviation.
     *
     * @param noise that standard deviation, above 0
     * @param standardErrorPerLogSd standard error of the log effect for a standard deviation of 1, above 0
     * @param degreesOfFreedom of the comparison's own test, 1 or more
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static double of(Claim claim, Estimate noise, double standardErrorPerLogSd, double degreesOfFreedom) {
        Argument.positive("standard error per log standard deviation", standardErrorPerLogSd);
        double steepness = Math.min(200, claim.standardErrorFor(0.5) * claim.normalCritical() / (noise.logSd() * standardErrorPerLogSd));
        return noise.average(logSd -> claim.power(logSd * standardErrorPerLogSd, degreesOfFreedom), steepness);
    }

    /** Largest distance of the true effect from what has to be told apart from it, in standard errors. */
    private static double steepness(Claim claim, Layout layout, Allocation allocation) {
        double distance = claim.standardErrorFor(0.5) * claim.normalCritical();
        return Math.min(200, distance / layout.standardError(allocation));
    }
}
