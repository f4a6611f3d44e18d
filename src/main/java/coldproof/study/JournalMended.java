package coldproof.study;

import java.util.Optional;

/**
 * The journal file was found damaged and set right without losing a byte.
 *
 * @param text what was found and what was done
 * @param savedAs name of the file beside the journal that keeps what was taken out
 */
public record JournalMended(String text, Optional<String> savedAs) implements Event {
    /** How the text ends that stands in the place of an entry of which nothing could be saved. */
    public static final String UNREAD = " could not be read when the journal was repaired";

    /** Refuses a blank text. */
    public JournalMended {
        Values.word("text", text);
        savedAs.ifPresent(file -> Values.word("savedAs", file));
    }

    @Override
    public EventKind kind() {
        return EventKind.JOURNAL_MENDED;
    }
}
