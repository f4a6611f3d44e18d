package coldproof.study;

import java.util.List;
import java.util.Optional;

/**
 * What repairing or merging did to a journal.
 *
 * @param keptAs file beside the journal that keeps what was there before; empty when nothing was changed
 * @param said what was done and what is worth knowing, one sentence each, in order
 * @param after the journal as it is now
 */
public record JournalChange(Optional<String> keptAs, List<String> said, JournalCheck after) {
    /** Copies the list. */
    public JournalChange {
        said = List.copyOf(said);
    }
}
