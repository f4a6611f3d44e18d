package coldproof.study;

import java.util.OptionalLong;

/**
 * One matter of which two copies of a journal say different things.
 *
 * @param what the matter, such as {@code trial 5 was recorded in both}
 * @param first what the first copy says, with its entry number
 * @param second what the second copy says, with its entry number
 * @param firstMerged number in the merged journal of the first copy's entry; empty when taking one of the two back cannot settle it
 * @param secondMerged the same for the second
 */
public record MergeConflict(String what, String first, String second, OptionalLong firstMerged, OptionalLong secondMerged) {
    /** Whether taking one of the two back settles it. */
    public boolean canBeSettled() {
        return firstMerged.isPresent() && secondMerged.isPresent();
    }
}
