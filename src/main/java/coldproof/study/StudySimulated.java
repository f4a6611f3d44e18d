package coldproof.study;

/**
 * All data of this study are simulated; everything made from it says so.
 *
 * @param text what simulated them, for the page
 */
public record StudySimulated(String text) implements Event {
    /** Refuses a blank text. */
    public StudySimulated {
        Values.word("text", text);
    }

    @Override
    public EventKind kind() {
        return EventKind.STUDY_SIMULATED;
    }
}
