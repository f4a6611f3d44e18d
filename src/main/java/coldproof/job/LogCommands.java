package coldproof.job;

import coldproof.plan.Position;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import coldproof.reason.checklist.Ask;
import coldproof.reason.checklist.Command;
import coldproof.report.text.ChecklistText;
import coldproof.study.Entry;
import coldproof.study.SessionClosed;
import java.nio.file.InvalidPathException;
import java.util.ArrayList;
import java.util.List;

/** Takes the words that mean the same at every question: undo, skip, note, pause, abort, elsewhere. */
final class LogCommands {
    private final BenchStudy study;
    private final LogPlace place;

    LogCommands(BenchStudy study, LogPlace place) {
        this.study = study;
        this.place = place;
    }

    LogReply command(Command.Said said) {
        return switch (said.command()) {
            case UNDO -> undo(said.rest());
            case SKIP -> skip(said.rest());
            case NOTE -> said.rest().isEmpty() ? push(Ask.NOTE) : reason(Ask.NOTE, said.rest());
            case PAUSE -> pause(said.rest());
            case ABORT -> abort(said.rest());
            case ELSEWHERE -> goElsewhere(said.rest());
            case QUIT -> LogReply.leaving();
            case HELP -> new LogReply(ChecklistText.help(), false);
        };
    }

    private LogReply push(Ask ask) {
        place.asks().push(ask);
        return LogReply.of();
    }

    private LogReply undo(String why) {
        Entry undone = study.undoLast(why);
        place.begin();
        return LogReply.of(ChecklistText.undone(study.takenBackBy(undone).event()));
    }

    private LogReply skip(String why) {
        if (place.step().position().isEmpty()) {
            throw new Refused(Problem.of("no trial is at hand to skip", Place.named("skip"), "", "Nothing was recorded. To end a session early, say abort."));
        }
        return why.isEmpty() ? push(Ask.SKIP_REASON) : reason(Ask.SKIP_REASON, why);
    }

    private LogReply pause(String why) {
        if (place.view().state().openSession().isEmpty()) {
            return LogReply.leaving("No session is open, so there is nothing to pause. Everything is recorded.");
        }
        if (!place.view().state().paused()) {
            study.pause(why);
        }
        return LogReply.leaving("Paused. Recorded. Go on with: coldproof log");
    }

    private LogReply abort(String why) {
        if (place.view().state().openSession().isEmpty()) {
            throw new Refused(Problem.of("no session is open", Place.named("abort"), "", "Nothing was recorded. Say quit to leave."));
        }
        return why.isEmpty() ? push(Ask.ABORT_REASON) : reason(Ask.ABORT_REASON, why);
    }

    LogReply reason(Ask ask, String text) {
        if (text.isEmpty()) {
            dropReason();
            return LogReply.of("Nothing was recorded.");
        }
        switch (ask) {
            case NOTE -> {
                study.note(text);
                dropReason();
                return LogReply.of("Noted. Recorded.");
            }
            case SKIP_REASON -> {
                Position position = place.step().position().orElseThrow();
                study.skip(position, text);
                place.begin();
                return LogReply.of("Trial " + position.number() + " is left out. Recorded.");
            }
            case ABORT_REASON -> {
                int session = place.view().state().openSession().orElseThrow().number();
                List<String> said = new ArrayList<>(List.of("Session " + session + " is ended for good; what it has stays. Recorded."));
                said.addAll(place.comingIn());
                study.endSession(SessionClosed.Ending.ABORTED, text);
                place.isBack();
                place.begin();
                return new LogReply(said, false);
            }
            default -> throw new IllegalStateException(ask + " asks for no reason");
        }
    }

    private void dropReason() {
        Ask top = place.asks().peek();
        if (top == Ask.NOTE || top == Ask.SKIP_REASON || top == Ask.ABORT_REASON) {
            place.asks().poll();
        }
    }

    /** What was not recorded stays the question; answered again, it goes into the other file. */
    LogReply goElsewhere(String name) {
        try {
            if (name.isBlank()) {
                throw new InvalidPathException(name, "blank");
            }
            study.continueIn(place.view().folder().resolve(name));
        } catch (InvalidPathException broken) {
            Refused refused = new Refused(Problem.of("\"" + name + "\" is no file name here", Place.named("elsewhere"),
                    "elsewhere and the name of a new file on another medium", "Nothing was changed; type it again."));
            refused.initCause(broken);
            throw refused;
        }
        return new LogReply(study.elsewhere(), false);
    }
}
