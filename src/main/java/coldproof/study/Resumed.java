package coldproof.study;

/**
 * The person went on, on this or another computer.
 *
 * @param note what had changed meanwhile, may be empty
 */
public record Resumed(String note) implements Event {
    /** Refuses a missing note. */
    public Resumed {
        Values.text("note", note);
    }

    @Override
    public EventKind kind() {
        return EventKind.RESUMED;
    }
}
