package coldproof.stats.power;

import coldproof.stats.Argument;
import coldproof.stats.Tail;
import coldproof.stats.distribution.Normal;

/** What a comparison is to show, with the error it may make and the effect there really is. */
public sealed interface Claim permits Claim.Difference, Claim.Equivalence {
    /**
     * Probability that the claim is shown.
     *
     * @param standardError true standard error of the log effect, above 0
     * @param degreesOfFreedom of its estimate, 1 or more, infinity allowed
     */
    double power(double standardError, double degreesOfFreedom);

    /** Significance level of the test, or of each of the two. */
    double falseAlarm();

    /** Whether enough units reach any power below 1. */
    boolean isReachable();

    /** Roughly the standard error that gives this power, for many degrees of freedom. */
    double standardErrorFor(double power);

    /** Critical value of the normal distribution at this level. */
    double normalCritical();

    /**
     * A difference from 0, by a t test.
     *
     * @param logEffect true difference of mean logs, finite
     * @param falseAlarm significance level, in (0, 0.5]
     * @param tail one-sided tests look in the direction of the effect
     */
    record Difference(double logEffect, double falseAlarm, Tail tail) implements Claim {
        /** Refuses what is out of range. */
        public Difference {
            Argument.finite("log effect", logEffect);
            Power.checkFalseAlarm(falseAlarm);
        }

        @Override
        public double power(double standardError, double degreesOfFreedom) {
            return Power.ofT(logEffect / standardError, degreesOfFreedom, falseAlarm, tail);
        }

        @Override
        public boolean isReachable() {
            return logEffect != 0;
        }

        @Override
        public double standardErrorFor(double power) {
            return Math.abs(logEffect) / Math.max(0.1, normalCritical() + Normal.quantile(power));
        }

        @Override
        public double normalCritical() {
            return Normal.upperPoint(tail.perSide(falseAlarm));
        }
    }

    /**
     * An effect between two margins, by two one-sided t tests: the interval at {@code 1 - 2 falseAlarm} lies inside the margins.
     *
     * @param logEffect true difference of mean logs, finite
     * @param low lower margin, a log ratio, finite; {@code -log(1.03)} or {@code log(0.97)} for 3 %
     * @param high upper margin, a log ratio above {@code low}, finite
     * @param falseAlarm significance level of each test, in (0, 0.5)
     */
    record Equivalence(double logEffect, double low, double high, double falseAlarm) implements Claim {
        /** Refuses what is out of range, and margins in the wrong order. */
        public Equivalence {
            Argument.finite("log effect", logEffect);
            Argument.finite("lower margin", low);
            Argument.between("upper margin", high, low, Double.POSITIVE_INFINITY);
            Argument.between("false-alarm rate", falseAlarm, 0, 0.5);
        }

        /** Margins that are symmetric on the log scale: {@code -margin} to {@code margin}. */
        public static Equivalence within(double margin, double logEffect, double falseAlarm) {
            Argument.positive("margin", margin);
            return new Equivalence(logEffect, -margin, margin, falseAlarm);
        }

        @Override
        public double power(double standardError, double degreesOfFreedom) {
            return Power.ofEquivalence(this, standardError, degreesOfFreedom);
        }

        @Override
        public boolean isReachable() {
            return logEffect > low && logEffect < high;
        }

        @Override
        public double standardErrorFor(double power) {
            double nearer = Math.min(logEffect - low, high - logEffect);
            double farther = Math.max(logEffect - low, high - logEffect);
            double missed = farther < 1.2 * nearer ? 0.5 * (1 - power) : 1 - power; // both margins can be missed, or only the nearer
            return nearer / Math.max(0.1, normalCritical() + Normal.upperPoint(missed));
        }

        @Override
        public double normalCritical() {
            return Normal.upperPoint(falseAlarm);
        }
    }
}
