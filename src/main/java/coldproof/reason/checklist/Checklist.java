package coldproof.reason.checklist;

import coldproof.plan.Plan;
import coldproof.plan.Position;
import coldproof.plan.RunSheet;
import coldproof.study.Numbered;
import coldproof.study.Session;
import coldproof.study.SessionClosed;
import coldproof.study.StartConditionsChecked;
import coldproof.study.StudyState;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;

/**
 * The order of work at the bench. Everything is found from what is recorded, so that a study broken off at any moment goes on at the right
 * step, here or on another computer.
 */
public final class Checklist {
    /** Name under which the time of a soak is recorded. */
    public static final String SOAK = "soak";
    private final Plan plan;
    private final RunSheet sheet;
    private final StudyState state;

    private Checklist(Plan plan, RunSheet sheet, StudyState state) {
        this.plan = plan;
        this.sheet = sheet;
        this.state = state;
    }

    /** What is to be done next. */
    public static Step next(Plan plan, RunSheet sheet, StudyState state) {
        return new Checklist(plan, sheet, state).next();
    }

    /**
     * The next trial to run: in the session that is open as long as it has one, else the first of the sheet. Trials left of a session that
     * was broken off for good are not run.
     */
    public static Optional<Position> nextTrial(RunSheet sheet, StudyState state) {
        Set<Integer> settled = state.settled();
        Set<Integer> brokenOff = brokenOff(state);
        Optional<Session> open = state.openSession();
        Optional<Position> first = Optional.empty();
        for (Position position : sheet.positions()) {
            if (settled.contains(position.number())) {
                continue;
            }
            if (open.isPresent() && open.get().number() == position.session()) {
                return Optional.of(position);
            }
            if (first.isEmpty() && !brokenOff.contains(position.session())) {
                first = Optional.of(position);
            }
            if (first.isPresent() && open.isEmpty()) {
                return first;
            }
        }
        return first;
    }

    /** How many trials are still to run: neither recorded nor left out, nor left of a session that was broken off for good. */
    public static int toCome(RunSheet sheet, StudyState state) {
        Set<Integer> settled = state.settled();
        Set<Integer> brokenOff = brokenOff(state);
        int toCome = 0;
        for (Position position : sheet.positions()) {
            toCome += settled.contains(position.number()) || brokenOff.contains(position.session()) ? 0 : 1;
        }
        return toCome;
    }

    private static Set<Integer> brokenOff(StudyState state) {
        Set<Integer> brokenOff = new HashSet<>();
        for (Session session : state.sessions()) {
            if (session.ending().equals(Optional.of(SessionClosed.Ending.ABORTED))) {
                brokenOff.add(session.number());
            }
        }
        return brokenOff;
    }

    private Step next() {
        Optional<Position> next = nextTrial(sheet, state);
        Optional<Session> open = state.openSession();
        if (open.isPresent() && (next.isEmpty() || next.get().session() != open.get().number())) {
            return new Step(Step.Kind.CLOSE_SESSION, open.get().number(), Optional.empty());
        }
        if (next.isEmpty()) {
            return new Step(Step.Kind.FINISHED, 0, Optional.empty());
        }
        if (open.isEmpty()) {
            return Step.of(Step.Kind.OPEN_SESSION, next.get());
        }
        if (state.paused()) {
            return Step.of(Step.Kind.RESUME, next.get());
        }
        if (plan.budget().soakSeconds() > 0 && !isSoaked(open.get())) {
            return Step.of(Step.Kind.SOAK, next.get());
        }
        if (plan.start().any() && !isChecked(next.get(), open.get())) {
            return Step.of(Step.Kind.START_CONDITIONS, next.get());
        }
        return Step.of(Step.Kind.RUN_TRIAL, next.get());
    }

    private boolean isSoaked(Session session) {
        return state.startConditions().stream().anyMatch(check -> isSince(check, session) && check.event().readings().containsKey(SOAK));
    }

    private boolean isChecked(Position position, Session session) {
        return state.startConditions().stream()
                .anyMatch(check -> isSince(check, session) && check.event().position().orElse(0) == position.number() && isOfStart(check.event()));
    }

    /** Readings taken for safety are written likewise; those of the start have a wanted reading among them, or say that none was taken. */
    private boolean isOfStart(StartConditionsChecked check) {
        return !check.deviations().isEmpty() || check.readings().isEmpty()
                || StartReadings.wanted(plan.start()).stream().anyMatch(check.readings()::containsKey);
    }

    private static boolean isSince(Numbered<StartConditionsChecked> check, Session session) {
        return check.event().session() == session.number() && check.sequence() > session.lastOpenedBy().sequence();
    }
}
