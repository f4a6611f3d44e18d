package coldproof.reason.verdict;

import coldproof.quantity.ConstantWord;
import coldproof.quantity.Interval;

/** Whether the change is at least what matters, in the direction it was found. */
public enum AtLeastMatters {
    /** The whole interval lies at or beyond what matters. */
    SHOWN,
    /** The interval reaches beyond what matters. */
    POSSIBLE,
    /** The interval ends short of what matters, on both sides. */
    NO;

    /** As scripts read it. */
    public String code() {
        return ConstantWord.of(this);
    }

    /** Judges an interval of the log change against the margin {@code ln(1 + matters)}. */
    static AtLeastMatters of(Interval interval, double margin) {
        if (interval.low() >= margin || interval.high() <= -margin) {
            return SHOWN;
        }
        return interval.high() > margin || interval.low() < -margin ? POSSIBLE : NO;
    }
}
