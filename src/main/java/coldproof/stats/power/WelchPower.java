package coldproof.stats.power;

import coldproof.stats.Argument;
import coldproof.stats.Tail;
import coldproof.stats.distribution.GaussLegendre;
import coldproof.stats.distribution.NoncentralT;
import coldproof.stats.distribution.StudentT;

/**
 * Power of Welch's t test: two groups with noise of their own, standard error {@code sqrt(s1^2 / n1 + s2^2 / n2)}, degrees of freedom from
 * the sample variances by Satterthwaite's formula.
 *
 * @see "B. L. Welch, Biometrika 34 (1947) 28-35; F. E. Satterthwaite, Biometrics Bulletin 2 (1946) 110-114 (both from memory)"
 */
public final class WelchPower {
    private static final double REACH = 9; // standard deviations of the angle on either side of its mode

    private WelchPower() {}

    /**
     * The two groups.
     *
     * @param baselineLogSd true standard deviation of log scores under the baseline, above 0
     * @param againstLogSd true standard deviation of log scores under the other level, above 0
     * @param allocation trials under each level, 2 or more
     */
    public record Groups(double baselineLogSd, double againstLogSd, Allocation allocation) {
        /** Refuses what is out of range. */
        public Groups {
            Argument.positive("log standard deviation under the baseline", baselineLogSd);
            Argument.positive("log standard deviation under the other level", againstLogSd);
            Argument.atLeast("trials under the baseline", allocation.baseline(), 2);
            Argument.atLeast("trials under the other level", allocation.against(), 2);
        }

        private double baselineVariance() {
            return baselineLogSd * baselineLogSd / allocation.baseline();
        }

        private double againstVariance() {
            return againstLogSd * againstLogSd / allocation.against();
        }

        /** True standard error of the difference of means. */
        public double standardError() {
            return Math.sqrt(baselineVariance() + againstVariance());
        }

        /** Satterthwaite's degrees of freedom at the true variances. */
        public double degreesOfFreedom() {
            return satterthwaite(baselineVariance(), allocation.baseline() - 1, againstVariance(), allocation.against() - 1);
        }
    }

    /**
     * Satterthwaite's degrees of freedom of the sum of two independent variance estimates:
     * {@code (v1 + v2)^2 / (v1^2 / df1 + v2^2 / df2)}.
     */
    static double satterthwaite(double first, double firstDf, double second, double secondDf) {
        double sum = first + second;
        return sum * sum / (first * first / firstDf + second * second / secondDf);
    }

    /**
     * The usual approximation: noncentral t with the degrees of freedom of the true variances. With few trials it is too high, by up to
     * 0.012 in the reference table.
     *
     * @param logEffect true difference of mean log scores, finite
     * @param falseAlarm significance level, in (0, 0.5]
     * @param tail one-sided tests look in the direction of the effect
     * @throws IllegalArgumentException if an argument is out of range or NaN
     */
    public static double approximate(double logEffect, Groups groups, double falseAlarm, Tail tail) {
        return Power.ofT(logEffect / groups.standardError(), groups.degreesOfFreedom(), falseAlarm, tail);
    }

    /**
     * Exact power, averaged over both sample variances.
     *
     * <p>Given the share {@code b} of the first in the sum of the two chi-squares, the sum itself is an independent chi-square with
     * {@code df1 + df2} degrees of freedom and Satterthwaite's degrees of freedom are fixed, so the power given {@code b} is a noncentral t
     * tail; one integral over the beta distribution of {@code b = sin^2(angle)} remains.
     *
     * @param logEffect true difference of mean log scores, finite
     * @param falseAlarm significance level, in (0, 0.5]
     * @param tail one-sided tests look in the direction of the effect
     * @return probability; agrees with a double integral to 1e-10
     * @throws IllegalArgumentException if an argument is out of range or NaN
     */
    public static double exact(double logEffect, Groups groups, double falseAlarm, Tail tail) {
        Argument.finite("log effect", logEffect);
        Power.checkFalseAlarm(falseAlarm);
        double firstDf = groups.allocation().baseline() - 1;
        double secondDf = groups.allocation().against() - 1;
        double df = firstDf + secondDf;
        double first = groups.baselineVariance() / firstDf;
        double second = groups.againstVariance() / secondDf;
        double variance = groups.baselineVariance() + groups.againstVariance();
        double noncentrality = Math.abs(logEffect) / Math.sqrt(variance);
        double mode = Math.atan2(Math.sqrt(firstDf - 1), Math.sqrt(secondDf - 1));
        double reach = REACH / Math.sqrt(2 * Math.max(1, df - 2)); // the curvature at the mode is 2 (df - 2)
        double low = Math.max(0, mode - reach);
        double high = Math.min(Math.PI / 2, mode + reach);
        GaussLegendre rule = GaussLegendre.atLeast(64);
        double sum = 0;
        double weights = 0;
        for (int i = 0; i < rule.order(); i++) {
            double angle = low + (high - low) * 0.5 * (1 + rule.node(i));
            double share = Math.sin(angle) * Math.sin(angle);
            double weight = rule.weight(i) * Math.exp((firstDf - 1) * Math.log(Math.sin(angle) / sineOf(mode))
                    + (secondDf - 1) * Math.log(Math.cos(angle) / sineOf(Math.PI / 2 - mode)));
            double firstPart = first * share;
            double secondPart = second * (1 - share);
            double critical = StudentT.upperPoint(tail.perSide(falseAlarm), satterthwaite(firstPart, firstDf, secondPart, secondDf));
            double bound = critical * Math.sqrt(df * (firstPart + secondPart) / variance);
            weights += weight;
            sum += weight * (tail == Tail.TWO ? NoncentralT.beyond(bound, df, noncentrality)
                    : NoncentralT.survival(bound, df, noncentrality));
        }
        return sum / weights;
    }

    /** Keeps the scale of the weights finite where the mode lies at an end. */
    private static double sineOf(double angle) {
        return Math.max(Math.sin(angle), 0.1);
    }
}
