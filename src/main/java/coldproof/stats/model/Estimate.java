package coldproof.stats.model;

import coldproof.stats.interval.ConfidenceInterval;

/**
 * An estimated difference of mean log scores with what is needed to judge it.
 *
 * @param logDifference the difference, against minus baseline, no unit (natural log)
 * @param standardError its standard error, 0 or more, no unit
 * @param degreesOfFreedom of the standard error, above 0; need not be whole
 * @param t {@code logDifference / standardError}; infinite where the standard error is 0 and the difference is not, 0 where both are 0
 * @param p two-sided probability of a |t| at least as large if there were no difference, in [0, 1]
 */
public record Estimate(double logDifference, double standardError, double degreesOfFreedom, double t, double p) {
    /** Refuses NaN, a negative standard error and degrees of freedom that are not above 0. */
    public Estimate {
        if (!Double.isFinite(logDifference)) {
            throw new IllegalArgumentException("logDifference " + logDifference + " is not finite");
        }
        if (!(standardError >= 0 && standardError < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("standardError " + standardError + " is not 0 or more and finite");
        }
        if (!(degreesOfFreedom > 0)) {
            throw new IllegalArgumentException("degreesOfFreedom " + degreesOfFreedom + " is not above 0");
        }
        if (Double.isNaN(t) || !(p >= 0 && p <= 1)) {
            throw new IllegalArgumentException("t " + t + " with p " + p + " is no test result");
        }
    }

    /**
     * The t test of a difference.
     *
     * @throws IllegalArgumentException if an argument is NaN, the standard error is negative or the degrees of freedom are not above 0
     */
    public static Estimate of(double logDifference, double standardError, double degreesOfFreedom) {
        double t = logDifference == 0 ? 0 : logDifference / standardError;
        return new Estimate(logDifference, standardError, degreesOfFreedom, t, Central.twoSidedP(t, degreesOfFreedom));
    }

    /**
     * The confidence interval {@code logDifference -+ t(1 - (1 - level)/2, df) standardError}.
     *
     * @param level in (0, 1)
     * @throws IllegalArgumentException if the level is outside (0, 1)
     */
    public ConfidenceInterval interval(double level) {
        ConfidenceInterval.requireLevel(level);
        double reach = standardError == 0 ? 0 : Central.twoSidedPoint(1 - level, degreesOfFreedom) * standardError;
        return new ConfidenceInterval(level, logDifference - reach, logDifference + reach);
    }

    /** Probability of a t at least as large as this one if there were no difference: the one-sided p for "greater". */
    public double pGreater() {
        return t > 0 ? p / 2 : 1 - p / 2;
    }

    /** The same estimate judged with no more degrees of freedom than the plan can give. */
    public Estimate withDegreesOfFreedomAtMost(double limit) {
        return degreesOfFreedom <= limit ? this : of(logDifference, standardError, limit);
    }

    /** Whether the scores did not vary at all, so that no test is possible. */
    public boolean isWithoutNoise() {
        return standardError == 0;
    }
}
