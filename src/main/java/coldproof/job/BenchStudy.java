package coldproof.job;

import coldproof.files.folder.StudyFolder;
import coldproof.plan.Change;
import coldproof.plan.Factor;
import coldproof.plan.Position;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import coldproof.study.DeviationNoted;
import coldproof.study.Entry;
import coldproof.study.Event;
import coldproof.study.NoteAdded;
import coldproof.study.Observed;
import coldproof.study.Paused;
import coldproof.study.Resumed;
import coldproof.study.Session;
import coldproof.study.SessionClosed;
import coldproof.study.SessionOpened;
import coldproof.study.Source;
import coldproof.study.StartConditionsChecked;
import coldproof.study.StudyFold;
import coldproof.study.StudyState;
import coldproof.study.TrialRecorded;
import coldproof.study.TrialSkipped;
import coldproof.study.TrialUndone;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;

/**
 * A study held open at the bench. Whatever a method returns normally from is on the medium; whatever it throws from is not, and may be tried
 * again.
 */
public final class BenchStudy implements AutoCloseable {
    private static final double AWAY_SECONDS = 1800; // beyond a trial and its soak; nobody stands at a bench so long without an entry (common practice)
    private final StudyFolder folder;
    private final List<Path> elsewhere = new ArrayList<>();
    private Optional<Path> spare = Optional.empty();
    private final StudyFold fold;
    private StudyState state;
    private StudyView view;

    private BenchStudy(StudyFolder folder) {
        this.folder = folder;
        fold = new StudyFold(folder.journal().entries());
        state = fold.state();
        view = StudyView.of(folder.path(), state, folder.journal().problems());
    }

    /**
     * Opens a study whose plan is frozen.
     *
     * @throws Refused if the plan is not frozen, another process holds the study, or the journal cannot be opened
     */
    public static BenchStudy open(Path path, Machine machine) {
        if (!StudyFolder.hasJournal(path)) {
            PlanFile.of(path);
            throw notFrozen(path);
        }
        StudyFolder folder = StudyFolder.open(path, machine.journalClock());
        try {
            BenchStudy study = new BenchStudy(folder);
            if (study.state.plan().isEmpty()) {
                throw notFrozen(path);
            }
            return study;
        } catch (RuntimeException wrong) {
            folder.close();
            throw wrong;
        }
    }

    /**
     * Opens a study, with a file to go on in where the study's own folder cannot be written, now or later.
     *
     * @param spare that file; it is made only when it is needed
     * @throws Refused as {@link #open(Path, Machine)}, or if the spare file holds entries that were not merged yet though the folder can be
     *     written again
     */
    public static BenchStudy open(Path path, Optional<Path> spare, Machine machine) {
        if (spare.isEmpty()) {
            return open(path, machine);
        }
        BenchStudy study;
        try {
            study = open(path, machine);
        } catch (Refused refused) {
            if (!(refused.getCause() instanceof IOException) || !StudyFolder.hasJournal(path)) {
                throw refused;
            }
            study = new BenchStudy(StudyFolder.openElsewhere(path, spare.get(), machine.journalClock()));
            study.elsewhere.add(spare.get());
            return study;
        }
        study.spare = spare;
        study.refuseUnmergedSpare();
        return study;
    }

    private void refuseUnmergedSpare() {
        if (spare.isPresent() && StudyFolder.hasMore(spare.get(), folder.journal().entries())) {
            folder.close();
            throw new Refused(Problem.of("this file holds entries that are not in the study yet", Place.named(spare.get().toString()),
                    "a name that is free", "Bring them in first: coldproof journal merge " + spare.get()));
        }
    }

    private static Refused notFrozen(Path path) {
        return new Refused(Problem.of("the plan is not frozen", Place.named(path.resolve(PlanFile.NAME).toString()),
                "a plan fixed before the first trial", "Look at it once more, then run: coldproof plan freeze"));
    }

    private void goOn(Entry entry) {
        fold.add(entry);
        state = fold.state();
        view = view.with(state, folder.journal().problems());
    }

    /** The study as it stands now. */
    public StudyView view() {
        return view;
    }

    /** What was wrong with the journal when it was opened. */
    public List<Problem> problems() {
        return folder.journal().problems();
    }

    /** Whether an entry waits that could not be written. */
    public boolean isUnwritten() {
        return folder.journal().pending().isPresent();
    }

    /** Writes an event, forces it to the medium, and only then returns it. Where that fails and there is a spare file, it goes there. */
    public Entry append(Event event) {
        Entry entry;
        try {
            entry = folder.journal().append(event);
        } catch (Refused refused) {
            if (spare.isEmpty() || !(refused.getCause() instanceof IOException)) {
                throw refused;
            }
            continueIn(spare.get());
            entry = folder.journal().append(event);
        }
        goOn(entry);
        return entry;
    }

    /**
     * Goes on in another, new file, as when the medium is full or gone. What was not recorded is to be given again.
     *
     * @throws Refused if the file is there already or cannot be made; the journal then stays where it is
     */
    public void continueIn(Path file) {
        folder.journal().continueIn(file);
        elsewhere.add(file);
        spare = Optional.empty();
    }

    /** Files outside the study that hold entries of this sitting, and how to bring them in; empty when all are in the study. */
    public List<String> elsewhere() {
        return elsewhere.stream().map(file -> "Entries are in " + file + ". Once the study can be written again, run: coldproof journal merge " + file)
                .toList();
    }

    /** Opens the session of a position where it is not open yet, closing the one before. */
    public void openSessionOf(Position position) {
        Optional<Session> open = state.openSession();
        if (open.isPresent() && open.get().number() == position.session()) {
            return;
        }
        open.ifPresent(before -> append(new SessionClosed(before.number(), SessionClosed.Ending.DONE, "")));
        append(new SessionOpened(position.session(), sessionLevels(position), ""));
    }

    /** Level of every per-session factor at a position. */
    Map<String, String> sessionLevels(Position position) {
        Map<String, String> levels = new LinkedHashMap<>();
        for (Factor factor : view.plan().factors()) {
            if (factor.change() == Change.PER_SESSION) {
                levels.put(factor.name(), position.levels().get(factor.name()));
            }
        }
        return levels;
    }

    /**
     * Records the score of a position.
     *
     * @throws Refused if the score has no logarithm
     */
    public Entry record(Position position, double score, List<Double> loops, Optional<String> trace, OffsetDateTime startedAt, double elapsedSeconds,
            Source source) {
        if (!(score > 0 && score < Double.POSITIVE_INFINITY)) {
            throw new Refused(Problem.of("the score is " + score, Place.named("trial " + position.number()), "a number above 0",
                    "Read it again; a run that failed is skipped with its reason instead."));
        }
        openSessionOf(position);
        return append(new TrialRecorded(position.number(), position.session(), position.orderInSession(), position.levels(), score,
                view.plan().metric().unit(), loops, trace, startedAt, elapsedSeconds, source));
    }

    /** Leaves a position out, with the reason. */
    public Entry skip(Position position, String reason) {
        openSessionOf(position);
        return append(new TrialSkipped(position.number(), reason));
    }

    /** Closes the session of a position when all its trials are settled. */
    public void closeWhenDone(Position position) {
        Set<Integer> settled = state.settled();
        boolean done = view.sheet().ofSession(position.session()).stream().allMatch(other -> settled.contains(other.number()));
        if (done && state.openSession().isPresent() && state.openSession().get().number() == position.session()) {
            append(new SessionClosed(position.session(), SessionClosed.Ending.DONE, ""));
        }
    }

    /**
     * Takes back the last trial or skip that counts.
     *
     * @return the entry that says so
     * @throws Refused if there is none
     */
    public Entry undoLast(String reason) {
        List<Entry> entries = folder.journal().entries();
        for (int i = entries.size() - 1; i >= 0; i--) {
            if (counts(entries.get(i))) {
                return append(new TrialUndone(entries.get(i).sequence(), reason));
            }
        }
        throw new Refused(Problem.of("there is no trial to take back", Place.named("undo"), "a recorded trial", "Nothing was changed."));
    }

    private boolean counts(Entry entry) {
        if (entry.event() instanceof TrialRecorded trial) {
            return state.trialAt(trial.position()).filter(kept -> kept.sequence() == entry.sequence()).isPresent();
        }
        return entry.event() instanceof TrialSkipped skip && state.skipped().containsKey(skip.position());
    }

    /** The entry that an undo took back. */
    Entry takenBackBy(Entry undo) {
        long target = ((TrialUndone) undo.event()).sequence();
        return folder.journal().entries().stream().filter(entry -> entry.sequence() == target).findFirst().orElseThrow();
    }

    /** Writes a note. */
    public Entry note(String text) {
        return append(new NoteAdded(text, OptionalLong.empty()));
    }

    /** Writes what was read before a trial, with what was not as planned. */
    public Entry startConditions(Position position, Map<String, Observed> readings, List<String> deviations) {
        openSessionOf(position);
        return append(new StartConditionsChecked(position.session(), OptionalInt.of(position.number()), readings, deviations));
    }

    /** Writes what was read at the start of a session, with what was not as planned. */
    public Entry sessionReadings(int session, Map<String, Observed> readings, List<String> deviations) {
        return append(new StartConditionsChecked(session, OptionalInt.empty(), readings, deviations));
    }

    /** Stops within a session, to go on later. */
    public Entry pause(String reason) {
        return append(new Paused(reason));
    }

    /** Goes on after a pause, or after having been away without one. */
    public Entry resume(String note) {
        return append(new Resumed(note));
    }

    /** Ends the open session for today and begins it again, so that it starts with a new soak. */
    public void reopenSession() {
        Session open = state.openSession().orElseThrow();
        append(new SessionClosed(open.number(), SessionClosed.Ending.PAUSED, ""));
        append(new SessionOpened(open.number(), open.levels(), ""));
    }

    /** Time since the last entry by the wall clock, s, 0 or more. */
    public double secondsSinceLastEntry(Machine machine) {
        List<Entry> entries = folder.journal().entries();
        Duration since = Duration.between(entries.get(entries.size() - 1).at().toInstant(), machine.wall().instant());
        return Math.max(0, since.toMillis() / 1000.0);
    }

    /** Whether a session was left open without a word for so long that the time since was no bench time. */
    public boolean isAway(Machine machine) {
        double trial = view.plan().budget().trialSeconds().orElse(0) + view.plan().budget().soakSeconds();
        return state.openSession().isPresent() && !state.paused() && secondsSinceLastEntry(machine) > AWAY_SECONDS + trial;
    }

    /** Notes a departure from the plan. */
    public Entry deviation(String text, String code) {
        return append(new DeviationNoted(text, code));
    }

    /** Ends the open session early. */
    public void endSession(SessionClosed.Ending ending, String reason) {
        state.openSession().ifPresent(open -> append(new SessionClosed(open.number(), ending, reason)));
    }

    @Override
    public void close() {
        folder.close();
    }
}
