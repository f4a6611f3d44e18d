package coldproof.reason.rehearse;

import coldproof.plan.Claim;
import coldproof.quantity.ConstantWord;
import coldproof.reason.verdict.Decision;

/**
 * What is taken to be true of the bench in a rehearsal.
 *
 * @param kind which story
 * @param name in words
 * @param trueLog the true log change, better is positive
 */
public record Story(Kind kind, String name, double trueLog) {
    private static final double ROUNDING = 1e-9; // a change of exactly what matters counts as one that matters

    /** The stories there are. */
    public enum Kind {
        /** The change changes nothing. */
        NO_CHANGE,
        /** The smallest change that matters. */
        MATTERS,
        /** Twice that. */
        TWICE,
        /** Nothing changes, but the scores drift steadily in the direction that favours the changed level. */
        DRIFT,
        /** Nothing changes, and what disturbs one trial lingers into the next. */
        LINGERING,
        /** Nothing changes, and now and then something else runs on the device. */
        DISTURBED,
        /** A bench like the study's own. */
        OWN,
        /** An invented device held by heat. */
        HEAT,
        /** An invented device held by its power limit. */
        POWER,
        /** An invented device held by its clock ceiling. */
        CLOCK,
        /** An invented device held by its supply. */
        SUPPLY,
        /** An invented device whose workload waits for something else. */
        WORKLOAD;

        /** As scripts read it. */
        public String code() {
            return ConstantWord.of(this);
        }
    }

    /** Whether a decision contradicts what is true in this story. A claim of gain is neither right nor wrong about a gain too small to matter. */
    boolean contradicts(Decision decision, Claim claim, double margin) {
        boolean matters = (claim == Claim.GAIN ? trueLog : Math.abs(trueLog)) >= margin * (1 - ROUNDING);
        return switch (claim) {
            case GAIN -> decision == Decision.PASS && trueLog <= 0 || decision == Decision.FAIL && matters;
            case SAME -> decision == Decision.PASS && matters || decision == Decision.FAIL && !matters;
        };
    }
}
