package coldproof.study;

import java.util.Map;

/**
 * A sitting at the bench began under one setting of the hard-to-change factors.
 *
 * @param session number in the run sheet, first is 1
 * @param levels level of every per-session factor, by factor, in the order of the plan
 * @param note what the person said about it, may be empty
 */
public record SessionOpened(int session, Map<String, String> levels, String note) implements Event {
    /** Refuses a session below 1 and blank levels. */
    public SessionOpened {
        Values.atLeast("session", session, 1);
        levels = Values.levels(levels);
        Values.text("note", note);
    }

    @Override
    public EventKind kind() {
        return EventKind.SESSION_OPENED;
    }
}
