package coldproof.study;

/**
 * The first entry of a journal.
 *
 * @param format version of the line format, 1 or more
 * @param study a mark drawn once when the study was made; two copies of one study share it
 */
public record JournalBegun(int format, String study) implements Event {
    /** Refuses a format below 1 and a blank mark. */
    public JournalBegun {
        Values.atLeast("format", format, 1);
        Values.word("study", study);
    }

    @Override
    public EventKind kind() {
        return EventKind.JOURNAL_BEGUN;
    }
}
