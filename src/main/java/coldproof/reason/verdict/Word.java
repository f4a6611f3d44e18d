package coldproof.reason.verdict;

import coldproof.plan.Claim;
import coldproof.quantity.ConstantWord;
import coldproof.quantity.Interval;

/** What the data say about the change. */
public enum Word {
    /** Better, and possibly by what matters. */
    GAIN,
    /** Better, by less than what matters. */
    TRIFLING_GAIN,
    /** Shown to be smaller than what matters, either way. */
    NO_MEANINGFUL_CHANGE,
    /** Worse, by less than what matters. */
    TRIFLING_LOSS,
    /** Worse, and possibly by what matters. */
    LOSS,
    /** The data do not tell. */
    UNDECIDED;

    /** As scripts read it. */
    public String code() {
        return ConstantWord.of(this);
    }

    /** As people read it. */
    public String words() {
        return name().replace('_', ' ');
    }

    /**
     * The first word that holds.
     *
     * @param interval two-sided interval of the log change, better is positive, at 1 - false alarm
     * @param equivalence interval at 1 - 2 false alarm
     * @param margin {@code ln(1 + matters)}, above 0
     */
    public static Word of(Interval interval, Interval equivalence, double margin) {
        if (interval.low() > 0) {
            return interval.high() > margin ? GAIN : TRIFLING_GAIN;
        }
        if (interval.high() < 0) {
            return interval.low() < -margin ? LOSS : TRIFLING_LOSS;
        }
        return equivalence.liesInside(-margin, margin) ? NO_MEANINGFUL_CHANGE : UNDECIDED;
    }

    /** What the word means for a claim. */
    public Decision decision(Claim claim, Interval interval, double margin) {
        return claim == Claim.GAIN ? forGain() : forSame(interval, margin);
    }

    private Decision forGain() {
        return switch (this) {
            case GAIN -> Decision.PASS;
            case TRIFLING_GAIN, NO_MEANINGFUL_CHANGE, TRIFLING_LOSS, LOSS -> Decision.FAIL;
            case UNDECIDED -> Decision.UNDECIDED;
        };
    }

    private Decision forSame(Interval interval, double margin) {
        return switch (this) {
            case NO_MEANINGFUL_CHANGE, TRIFLING_GAIN, TRIFLING_LOSS -> Decision.PASS;
            case GAIN, LOSS -> interval.low() > margin || interval.high() < -margin ? Decision.FAIL : Decision.UNDECIDED;
            case UNDECIDED -> Decision.UNDECIDED;
        };
    }
}
