package coldproof.study;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Keeps the sittings while entries are folded: at most one is open. */
final class SessionBook {
    private final Map<Integer, Sitting> sittings = new LinkedHashMap<>();
    private final List<Oddity> oddities;
    private Sitting open;
    private Entry previous;

    SessionBook(List<Oddity> oddities) {
        this.oddities = oddities;
    }

    /** One sitting as it grows. */
    private static final class Sitting {
        private final Entry openedBy;
        private final SessionOpened opened;
        private Entry lastOpenedBy;
        private Entry closedBy;
        private SessionClosed closed;
        private double seconds;
        private boolean measured = true;

        private Sitting(Entry openedBy, SessionOpened opened) {
            this.openedBy = openedBy;
            this.lastOpenedBy = openedBy;
            this.opened = opened;
        }

        private Session session() {
            return new Session(opened.session(), opened.levels(), opened.note(), openedBy, lastOpenedBy, Optional.ofNullable(closedBy),
                    Optional.ofNullable(closed).map(SessionClosed::ending), closed == null ? "" : closed.reason(),
                    new Elapsed(seconds, measured));
        }
    }

    /** Counts the time since the entry before towards the open session; a step that ends in going on after a break is not bench time. */
    void pass(Entry entry) {
        if (open != null && previous != null && entry.event().kind() != EventKind.RESUMED) {
            Elapsed step = Elapsed.between(previous, entry);
            open.seconds += step.seconds();
            open.measured &= step.measured();
        }
        previous = entry;
    }

    void open(Entry entry, SessionOpened event) {
        if (open != null && open.opened.session() != event.session()) {
            odd(entry, "session " + event.session() + " was opened while session " + open.opened.session() + " was still open");
            open.closedBy = entry;
        }
        Sitting known = sittings.get(event.session());
        if (known == null) {
            open = new Sitting(entry, event);
            sittings.put(event.session(), open);
            return;
        }
        if (known.closed == null || known.closed.ending() != SessionClosed.Ending.PAUSED) {
            odd(entry, "session " + event.session() + " was opened again");
        }
        if (!known.opened.levels().equals(event.levels())) {
            odd(entry, "session " + event.session() + " was opened again at other levels: " + event.levels() + ", first "
                    + known.opened.levels());
        }
        known.lastOpenedBy = entry;
        known.closedBy = null;
        known.closed = null;
        open = known;
    }

    void close(Entry entry, SessionClosed event) {
        if (open == null || open.opened.session() != event.session()) {
            odd(entry, "session " + event.session() + " was closed but was not open");
            return;
        }
        open.closedBy = entry;
        open.closed = event;
        open = null;
    }

    /** Notes a trial of a session that is not the open one; journals without any session (an imported table) are left alone. */
    void trial(Entry entry, int session) {
        if (!sittings.isEmpty() && (open == null || open.opened.session() != session)) {
            odd(entry, "a trial of session " + session + " was recorded while that session was not open");
        }
    }

    List<Session> sessions() {
        List<Session> sessions = new ArrayList<>();
        for (Sitting sitting : sittings.values()) {
            sessions.add(sitting.session());
        }
        return sessions;
    }

    private void odd(Entry entry, String text) {
        oddities.add(new Oddity(Oddity.Kind.SESSION_OUT_OF_TURN, entry.sequence(), text));
    }
}
