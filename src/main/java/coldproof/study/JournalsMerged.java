package coldproof.study;

import java.util.List;

/**
 * Two copies of the study, logged apart, were put together.
 *
 * @param common entries both had; 0 for a journal that went on elsewhere
 * @param fromFirst entries only the first had
 * @param fromSecond entries only the second had
 * @param resolved one sentence for each conflict and how it was settled
 */
public record JournalsMerged(long common, long fromFirst, long fromSecond, List<String> resolved) implements Event {
    /** Refuses negative counts. */
    public JournalsMerged {
        Values.atLeast("common", common, 0);
        Values.atLeast("fromFirst", fromFirst, 0);
        Values.atLeast("fromSecond", fromSecond, 0);
        resolved = List.copyOf(resolved);
    }

    @Override
    public EventKind kind() {
        return EventKind.JOURNALS_MERGED;
    }
}
