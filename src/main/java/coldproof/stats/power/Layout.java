package coldproof.stats.power;

import coldproof.stats.Argument;

/** Where the noise of a comparison sits: gives the standard error of the log effect and its degrees of freedom. */
public sealed interface Layout permits Layout.TwoGroups, Layout.Pairs, Layout.Sessions {
    /** True standard error of the estimated log effect, above 0. */
    double standardError(Allocation allocation);

    /** Degrees of freedom of the estimated standard error. */
    double degreesOfFreedom(Allocation allocation);

    /** Fewest units under a level with which the comparison has degrees of freedom, equal numbers assumed: 2. */
    default int fewest() {
        return 2;
    }

    /** Whether the two levels always have the same number of units. */
    default boolean isPaired() {
        return false;
    }

    /**
     * Two independent groups of trials, compared by the t test with one pooled variance: standard error
     * {@code logSd sqrt(1/n1 + 1/n2)}, {@code n1 + n2 - 2} degrees of freedom.
     *
     * @param logSd run-to-run standard deviation of the log score, above 0, finite
     */
    record TwoGroups(double logSd) implements Layout {
        /** Refuses a standard deviation of 0 or less. */
        public TwoGroups {
            Argument.positive("log standard deviation", logSd);
        }

        @Override
        public double standardError(Allocation allocation) {
            return logSd * Math.sqrt(1.0 / allocation.baseline() + 1.0 / allocation.against());
        }

        @Override
        public double degreesOfFreedom(Allocation allocation) {
            return allocation.total() - 2;
        }
    }

    /**
     * Pairs of trials, compared by the t test on their differences: standard error {@code differenceLogSd / sqrt(n)}, {@code n - 1} degrees
     * of freedom.
     *
     * @param differenceLogSd standard deviation of the difference of two log scores of a pair, above 0, finite; {@code sqrt(2)} times the
     *     run-to-run standard deviation where the members of a pair have nothing in common
     */
    record Pairs(double differenceLogSd) implements Layout {
        /** Refuses a standard deviation of 0 or less. */
        public Pairs {
            Argument.positive("log standard deviation of a difference", differenceLogSd);
        }

        @Override
        public double standardError(Allocation allocation) {
            return differenceLogSd / Math.sqrt(pairs(allocation));
        }

        @Override
        public double degreesOfFreedom(Allocation allocation) {
            return pairs(allocation) - 1;
        }

        @Override
        public boolean isPaired() {
            return true;
        }

        private static int pairs(Allocation allocation) {
            if (allocation.baseline() != allocation.against()) {
                throw new IllegalArgumentException("pairs cannot have " + allocation.baseline() + " and " + allocation.against()
                        + " members: both levels have the same number");
            }
            return allocation.baseline();
        }
    }

    /**
     * A factor set once per session, compared by the t test on session means: variance of the effect
     * {@code (sessionLogSd^2 + runLogSd^2 / trialsPerSession) (1/k1 + 1/k2)}, {@code k1 + k2 - 2} degrees of freedom.
     *
     * @param sessionLogSd session-to-session standard deviation of the log score, 0 or more, finite
     * @param runLogSd run-to-run standard deviation inside a session, 0 or more, finite; not both 0
     * @param trialsPerSession trials in each session, 1 or more
     * @see "D. C. Montgomery, Design and Analysis of Experiments, split-plot designs: whole-plot error stratum (common practice)"
     */
    record Sessions(double sessionLogSd, double runLogSd, int trialsPerSession) implements Layout {
        /** Refuses negative standard deviations, both of them 0, and fewer than one trial. */
        public Sessions {
            Argument.within("session-to-session log standard deviation", sessionLogSd, 0, Double.MAX_VALUE);
            Argument.within("run-to-run log standard deviation", runLogSd, 0, Double.MAX_VALUE);
            Argument.positive("sum of the log standard deviations", sessionLogSd + runLogSd);
            Argument.atLeast("trials per session", trialsPerSession, 1);
        }

        /** Standard deviation of a session mean. */
        public double sessionMeanLogSd() {
            return Math.hypot(sessionLogSd, runLogSd / Math.sqrt(trialsPerSession));
        }

        @Override
        public double standardError(Allocation allocation) {
            return sessionMeanLogSd() * Math.sqrt(1.0 / allocation.baseline() + 1.0 / allocation.against());
        }

        @Override
        public double degreesOfFreedom(Allocation allocation) {
            return allocation.total() - 2;
        }
    }
}
