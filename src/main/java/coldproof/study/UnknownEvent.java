package coldproof.study;

/**
 * An event of a kind this version does not know, most likely written by a newer one; kept and passed through as it is.
 *
 * @param word the kind as written
 * @param data its payload as written, a JSON object
 */
public record UnknownEvent(String word, String data) implements Event {
    /** Refuses a blank kind. */
    public UnknownEvent {
        Values.word("word", word);
        Values.text("data", data);
    }

    @Override
    public EventKind kind() {
        return EventKind.UNKNOWN;
    }
}
