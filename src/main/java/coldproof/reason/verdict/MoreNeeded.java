package coldproof.reason.verdict;

import java.util.OptionalInt;

/**
 * What would probably settle it.
 *
 * @param sessions further sessions of each level (of both levels, where sessions hold both); empty where sessions are not the unit or it cannot be said
 * @param trials further trials of each level (pairs, for pairs); empty likewise
 * @param text the same in a sentence, or why it cannot be said; empty where nothing is missing
 */
public record MoreNeeded(OptionalInt sessions, OptionalInt trials, String text) {
    /** Nothing is missing. */
    public static final MoreNeeded NOTHING = unknown("");

    /** It cannot be said how many. */
    static MoreNeeded unknown(String why) {
        return new MoreNeeded(OptionalInt.empty(), OptionalInt.empty(), why);
    }
}
