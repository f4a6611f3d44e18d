package coldproof.reason.verdict;

import java.util.OptionalInt;

/**
 * What would probably settle it.
 *
 * @param sessions further sessions of each level; empty where sessions are not the unit or nothing is missing
 * @param trials further trials of each level (pairs, for pairs); empty likewise
 */
public record MoreNeeded(OptionalInt sessions, OptionalInt trials) {
    /** Nothing is missing, or nothing of the kind would help. */
    public static final MoreNeeded NOTHING = new MoreNeeded(OptionalInt.empty(), OptionalInt.empty());
}
