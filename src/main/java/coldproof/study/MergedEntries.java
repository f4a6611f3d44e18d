package coldproof.study;

import java.util.List;

/**
 * Two copies of a journal put together.
 *
 * @param entries all entries of both, each once, numbered anew from 1, what they point at with them
 * @param common entries both had
 * @param fromFirst entries only the first had
 * @param fromSecond entries only the second had
 * @param conflicts where the two say different things of one matter; empty when they merge by themselves
 * @param remarks what a careful reader should know of the merge, one sentence each
 */
public record MergedEntries(List<Entry> entries, long common, long fromFirst, long fromSecond, List<MergeConflict> conflicts,
        List<String> remarks) {
    /** Copies the lists. */
    public MergedEntries {
        entries = List.copyOf(entries);
        conflicts = List.copyOf(conflicts);
        remarks = List.copyOf(remarks);
    }
}
