package coldproof.stats.power;

import coldproof.stats.Argument;
import coldproof.stats.Tail;
import coldproof.stats.distribution.NoncentralT;
import coldproof.stats.distribution.OwensQ;
import coldproof.stats.distribution.StudentT;

/**
 * Exact power of t tests on log scores: the probability that a test rejects when an effect is really there.
 *
 * <p>The statistic is noncentral t. Two-sided power counts both tails, so that significance in the wrong direction is included and power
 * at no effect is the false-alarm rate; one-sided power is that of a test in the direction of the effect. Normal log scores with one
 * variance are assumed. Agrees with reference tables to 1e-11 relative.
 *
 * @see "J. Cohen, Statistical Power Analysis for the Behavioral Sciences, 2nd ed. (1988), ch. 2 (from memory)"
 */
public final class Power {
    private Power() {}

    /**
     * Power of a t test with a given noncentrality.
     *
     * @param noncentrality true effect in true standard errors, finite, of either sign
     * @param degreesOfFreedom of the estimated standard error, 1 or more, infinity allowed
     * @param falseAlarm significance level, in (0, 0.5]; for {@code TWO} tails, both sides together
     * @param tail one-sided tests look in the direction of the effect
     * @return probability in [falseAlarm, 1]
     * @throws IllegalArgumentException if an argument is out of range or NaN
     */
    public static double ofT(double noncentrality, double degreesOfFreedom, double falseAlarm, Tail tail) {
        Argument.finite("noncentrality", noncentrality);
        Argument.within("degrees of freedom", degreesOfFreedom, 1, Double.POSITIVE_INFINITY);
        checkFalseAlarm(falseAlarm);
        double critical = StudentT.upperPoint(tail.perSide(falseAlarm), degreesOfFreedom);
        double size = Math.abs(noncentrality);
        return tail == Tail.TWO
                ? NoncentralT.beyond(critical, degreesOfFreedom, size)
                : NoncentralT.survival(critical, degreesOfFreedom, size);
    }

    /**
     * Power of the t test with one pooled variance on two independent groups of trials. For trials grouped in sessions use
     * {@link #ofSessions}.
     *
     * @param logEffect true difference of mean log scores, finite; +3 % is {@code log(1.03)}
     * @param logSd run-to-run standard deviation of the log score, above 0; {@code sqrt(log(1 + cv * cv))}
     * @param nBaseline trials under the baseline, 1 or more
     * @param nAgainst trials under the other level, 1 or more; together at least 3
     * @param falseAlarm significance level, in (0, 0.5]
     * @param tail one-sided tests look in the direction of the effect
     * @return probability in [falseAlarm, 1]
     * @throws IllegalArgumentException if an argument is out of range or NaN
     */
    public static double ofTwoGroups(double logEffect, double logSd, int nBaseline, int nAgainst, double falseAlarm, Tail tail) {
        return of(new Claim.Difference(logEffect, falseAlarm, tail), new Layout.TwoGroups(logSd), new Allocation(nBaseline, nAgainst));
    }

    /**
     * Power of the t test on the differences of pairs of trials.
     *
     * <p>The standard deviation is that of a difference. Where the two trials of a pair share nothing it is {@code sqrt(2)} times the
     * run-to-run standard deviation of the log score; that mapping is the caller's, because pairs that share the weather of the hour have
     * a smaller one.
     *
     * @param logEffect true mean difference of log scores, finite
     * @param differenceLogSd standard deviation of the difference of a pair, above 0
     * @param pairs 2 or more
     * @param falseAlarm significance level, in (0, 0.5]
     * @param tail one-sided tests look in the direction of the effect
     * @return probability in [falseAlarm, 1]
     * @throws IllegalArgumentException if an argument is out of range or NaN
     */
    public static double ofPairs(double logEffect, double differenceLogSd, int pairs, double falseAlarm, Tail tail) {
        return of(new Claim.Difference(logEffect, falseAlarm, tail), new Layout.Pairs(differenceLogSd), Allocation.equal(pairs));
    }

    /**
     * Power of the t test on session means, for a factor that is set once per session. Balanced trials are assumed; then no mixed model
     * has more power.
     *
     * @param logEffect true difference of mean log scores, finite
     * @param sessionLogSd session-to-session standard deviation, 0 or more
     * @param runLogSd run-to-run standard deviation inside a session, 0 or more; not both 0
     * @param sessionsBaseline sessions under the baseline, 1 or more
     * @param sessionsAgainst sessions under the other level, 1 or more; together at least 3
     * @param trialsPerSession trials in each session, 1 or more
     * @param falseAlarm significance level, in (0, 0.5]
     * @param tail one-sided tests look in the direction of the effect
     * @return probability in [falseAlarm, 1]
     * @throws IllegalArgumentException if an argument is out of range or NaN
     */
    public static double ofSessions(double logEffect, double sessionLogSd, double runLogSd, int sessionsBaseline, int sessionsAgainst,
            int trialsPerSession, double falseAlarm, Tail tail) {
        return of(new Claim.Difference(logEffect, falseAlarm, tail), new Layout.Sessions(sessionLogSd, runLogSd, trialsPerSession),
                new Allocation(sessionsBaseline, sessionsAgainst));
    }

    /**
     * Probability that a claim is shown by a layout with so many units.
     *
     * @throws IllegalArgumentException if the allocation leaves no degree of freedom, or does not fit the layout
     */
    public static double of(Claim claim, Layout layout, Allocation allocation) {
        double degreesOfFreedom = layout.degreesOfFreedom(allocation);
        if (!(degreesOfFreedom >= 1)) {
            throw new IllegalArgumentException(allocation.baseline() + " and " + allocation.against()
                    + " units leave no degree of freedom for the noise: one level needs another unit");
        }
        return claim.power(layout.standardError(allocation), degreesOfFreedom);
    }

    /**
     * Power of two one-sided t tests, exact by Owen's Q. Goes to 0 where the standard error is large against the margins.
     *
     * @param claim margins, true effect and level
     * @param standardError true standard error of the log effect, above 0
     * @param degreesOfFreedom of its estimate, 1 or more, infinity allowed
     * @return probability in [0, 1]
     * @throws IllegalArgumentException if an argument is out of range or NaN
     * @see "D. J. Schuirmann, Journal of Pharmacokinetics and Biopharmaceutics 15 (1987) 657-680 (from memory)"
     */
    static double ofEquivalence(Claim.Equivalence claim, double standardError, double degreesOfFreedom) {
        Argument.positive("standard error", standardError);
        double critical = StudentT.upperPoint(claim.falseAlarm(), degreesOfFreedom);
        double low = (claim.logEffect() - claim.low()) / standardError;
        double high = (claim.logEffect() - claim.high()) / standardError;
        return OwensQ.bothTests(degreesOfFreedom, critical, low, high);
    }

    static void checkFalseAlarm(double falseAlarm) {
        if (!(falseAlarm > 0 && falseAlarm <= 0.5)) {
            throw new IllegalArgumentException("false-alarm rate " + falseAlarm + " is outside (0, 0.5]");
        }
    }
}
