package coldproof.study;

import java.util.OptionalLong;

/**
 * Something the person wanted remembered.
 *
 * @param text the note, never blank
 * @param about the entry it is about, if any
 */
public record NoteAdded(String text, OptionalLong about) implements Event {
    /** Refuses a blank note and a sequence below 1. */
    public NoteAdded {
        Values.word("text", text);
        about.ifPresent(sequence -> Values.atLeast("about", sequence, 1));
    }

    @Override
    public EventKind kind() {
        return EventKind.NOTE_ADDED;
    }
}
