package coldproof.study;

import java.util.Map;
import java.util.Optional;

/**
 * A sitting at the bench.
 *
 * @param number number in the run sheet, first is 1
 * @param levels level of every per-session factor, by factor, as when first opened
 * @param note what was said when it was opened, may be empty
 * @param openedBy the entry that opened it first
 * @param lastOpenedBy the entry that opened it last; the same unless it was gone on with another day
 * @param closedBy the entry that closed it last; empty while it is open
 * @param ending how it ended; empty while it is open
 * @param reason why it ended so, may be empty
 * @param elapsed time from its opening to its last entry, breaks between a pause and going on left out
 */
public record Session(int number, Map<String, String> levels, String note, Entry openedBy, Entry lastOpenedBy, Optional<Entry> closedBy,
        Optional<SessionClosed.Ending> ending, String reason, Elapsed elapsed) {
    /** Copies the levels in their order. */
    public Session {
        levels = Values.levels(levels);
    }

    /** Whether trials may still be run in it now. */
    public boolean isOpen() {
        return closedBy.isEmpty();
    }
}
