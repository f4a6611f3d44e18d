package coldproof.study;

/**
 * A sitting ended.
 *
 * @param session number in the run sheet, first is 1
 * @param ending how it ended
 * @param reason why, in the words of the person; may be empty when done
 */
public record SessionClosed(int session, Ending ending, String reason) implements Event {
    /** Refuses a session below 1, and a sitting aborted without a reason. */
    public SessionClosed {
        Values.atLeast("session", session, 1);
        Values.present("ending", ending);
        Values.text("reason", reason);
        if (ending == Ending.ABORTED) {
            Values.word("reason", reason);
        }
    }

    /** How a sitting can end. */
    public enum Ending {
        /** All its trials were run or skipped. */
        DONE,
        /** Broken off for good; the reason is given. */
        ABORTED,
        /** Broken off, to be gone on with another day. */
        PAUSED
    }

    @Override
    public EventKind kind() {
        return EventKind.SESSION_CLOSED;
    }
}
