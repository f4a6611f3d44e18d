package coldproof.reason.verdict;

import coldproof.quantity.Interval;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The answer, with all it rests on. Log changes are positive when things got better.
 *
 * @param word what the data say
 * @param decision what became of the claim
 * @param atLeastMatters whether the change is at least what matters
 * @param reason why the data cannot carry a verdict, in a sentence; empty when they can
 * @param estimate the change and its test; empty when there is none
 * @param bare the change as it came out, where there is no test of it; empty where there is one, or it cannot be told from something else
 * @param interval of the log change at 1 - false alarm
 * @param equivalence of the log change at 1 - 2 false alarm
 * @param method how it was tested, in words
 * @param stratum what it was tested against
 * @param sessions sessions of baseline and changed level; empty list when trials have none
 * @param trials trials of baseline and changed level
 * @param sessionCvPercent session-to-session noise, percent, where it can be told
 * @param runCvPercent run-to-run noise, percent, where it can be told
 * @param randomisation the randomisation test, where there is one
 * @param moreNeeded what would probably settle it
 * @param checks what was looked at
 * @param carried noise from elsewhere that it was judged by
 */
public record Verdict(Word word, Decision decision, AtLeastMatters atLeastMatters, String reason, Optional<Change> estimate,
        Optional<Bare> bare, Optional<Interval> interval, Optional<Interval> equivalence, String method, Stratum stratum, List<Integer> sessions, List<Integer> trials,
        OptionalDouble sessionCvPercent, OptionalDouble runCvPercent, Optional<Randomisation> randomisation, MoreNeeded moreNeeded,
        List<Check> checks, Optional<CarriedNoise> carried) {
    /**
     * The estimated change.
     *
     * @param log natural log of the ratio, positive is better
     * @param standardError of the log change
     * @param degreesOfFreedom of the standard error
     * @param t log / standard error
     * @param p two-sided p-value
     * @param metricChangePercent the change of the metric itself, percent
     */
    public record Change(double log, double standardError, double degreesOfFreedom, double t, double p, double metricChangePercent) {}

    /**
     * A change that nothing judges.
     *
     * @param log natural log of the ratio, positive is better
     * @param metricChangePercent the change of the metric itself, percent
     */
    public record Bare(double log, double metricChangePercent) {}

    /** Copies. */
    public Verdict {
        sessions = List.copyOf(sessions);
        trials = List.copyOf(trials);
        checks = List.copyOf(checks);
    }
}
