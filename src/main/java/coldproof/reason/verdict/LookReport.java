package coldproof.reason.verdict;

import coldproof.quantity.Interval;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What looking before the end did to a verdict.
 *
 * @param planned how many looks the plan has, the last included
 * @param unitWord what is counted between looks: session, pair or trial
 * @param taken the looks taken so far, in order; those whose trials could not carry a verdict are left out, they spend nothing
 * @param next when the next look is due, as a sentence; empty after the last
 * @param chance that going on will still show a gain if the change is just what matters, where the study goes on and claims a gain
 * @param adjusted estimate and interval that allow for the looks, where the study has just stopped; of several changes, where this one is decided
 */
public record LookReport(int planned, String unitWord, List<Look> taken, String next, OptionalDouble chance, Optional<Adjusted> adjusted) {
    /** Below this chance going on is called futile; advice only, it spends nothing. */
    public static final double FUTILE = 0.1;

    /** Copies. */
    public LookReport {
        taken = List.copyOf(taken);
    }

    /**
     * One look.
     *
     * @param number in the plan, first is 1
     * @param units sessions, pairs or trials done by then
     * @param fraction share of the planned information
     * @param t test statistic
     * @param bound the t it is held against, two-sided
     * @param nominalP the p value at that bound
     * @param spent false-alarm rate spent up to and with this look
     * @param word what the data said there
     */
    public record Look(int number, int units, double fraction, double t, double bound, double nominalP, double spent, Word word) {
        /** Whether the study could stop here. */
        public boolean decides() {
            return word != Word.UNDECIDED;
        }
    }

    /**
     * Stagewise inference. Of several changes each has an equal share of the error rate, so that all intervals hold together with their level,
     * and p is as many times larger (Bonferroni, whatever their dependence).
     *
     * @param log median unbiased log change
     * @param p two-sided p value, adjusted for all changes
     * @param interval of the log change
     * @param changes how many changes are judged together
     */
    public record Adjusted(double log, double p, Interval interval, int changes) {}

    /** The first look at which the study could stop. */
    public Optional<Look> decidedAt() {
        return taken.stream().filter(Look::decides).findFirst();
    }

    /** Whether going on would hardly show a gain. */
    public boolean isFutile() {
        return chance.isPresent() && chance.getAsDouble() < FUTILE;
    }
}
