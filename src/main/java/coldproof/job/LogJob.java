package coldproof.job;

import coldproof.plan.Plan;
import coldproof.plan.Position;
import coldproof.quantity.Dimension;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.QuantityText;
import coldproof.quantity.Refused;
import coldproof.reason.checklist.Ask;
import coldproof.reason.checklist.Checklist;
import coldproof.reason.checklist.Command;
import coldproof.reason.checklist.Doubt;
import coldproof.reason.checklist.Meters;
import coldproof.reason.checklist.Progress;
import coldproof.reason.checklist.Question;
import coldproof.reason.checklist.ScoreText;
import coldproof.reason.checklist.StartReadings;
import coldproof.reason.checklist.Step;
import coldproof.reason.looks.LookPoint;
import coldproof.reason.looks.LookSchedule;
import coldproof.reason.safety.OutdoorBudget;
import coldproof.report.text.ChecklistText;
import coldproof.report.text.FieldCardText;
import coldproof.study.Entry;
import coldproof.study.Observed;
import coldproof.study.SessionClosed;
import coldproof.study.Source;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The checklist at the bench: asks one thing at a time and records every answer before it is acknowledged. A face shows {@link #question()},
 * hands the typed line to {@link #answer}, and shows what that says; the same lines give the same entries on every face. An answer that is
 * refused, or could not be written, changes nothing and may be given again.
 */
public final class LogJob implements AutoCloseable {
    /** Answer to the soak when nobody knows how long it was. */
    static final String UNKNOWN = "unknown";
    private static final int LONGEST_ANSWER = 100_000;
    private final BenchStudy study;
    private final Machine machine;
    private final LogSafety safety;
    private final Offers offers;
    private final Map<String, Observed> readings = new LinkedHashMap<>();
    private final Deque<Ask> asks = new ArrayDeque<>();
    private Optional<OutdoorBudget.Limit> stay = Optional.empty();
    private Step step;
    private boolean away;
    private Optional<ScoreText> doubted = Optional.empty();
    private OffsetDateTime startedAt;
    private long startedNanos;

    private LogJob(BenchStudy study, Machine machine) {
        this.study = study;
        this.machine = machine;
        this.safety = new LogSafety(study, machine);
        this.offers = new Offers(machine, study);
        this.away = study.isAway(machine);
        begin();
    }

    /**
     * Opens the checklist of a study whose plan is frozen.
     *
     * @throws Refused if the plan is not frozen, another process holds the study, or the journal cannot be opened
     */
    public static LogJob open(Path folder, Machine machine) {
        return new LogJob(BenchStudy.open(folder, machine), machine);
    }

    /**
     * Opens the checklist, with a file to go on in where the study's own folder cannot be written, now or later.
     *
     * @throws Refused as {@link BenchStudy#open(Path, Optional, Machine)}
     */
    public static LogJob open(Path folder, Optional<Path> spare, Machine machine) {
        return new LogJob(BenchStudy.open(folder, spare, machine), machine);
    }

    /** How to bring in entries that had to go elsewhere. */
    public List<String> elsewhere() {
        return study.elsewhere();
    }

    /** What limits the stay outdoors, as judged last: frostbite, cold, daylight or the battery. */
    public Optional<OutdoorBudget.Limit> stayLimit() {
        return stay;
    }

    /** The study as it stands. */
    public StudyView view() {
        return study.view();
    }

    /** What was wrong with the journal when it was opened. */
    public List<Problem> problems() {
        return study.problems();
    }

    /** Whether the last answer could not be written; it is recorded once it is given again and can be. */
    public boolean isUnwritten() {
        return study.isUnwritten();
    }

    /** What is asked now. */
    public Question question() {
        Plan plan = view().plan();
        Optional<Doubt> doubt = doubted.flatMap(score -> Doubt.of(plan, view().state(), step.position().orElseThrow(), score.score()));
        Ask ask = asks.peek();
        List<String> cautions = ask == Ask.SAFETY ? safety.lines() : List.of();
        Optional<Observed> shown = offers.shown(ask);
        return new Question(ask, step, Progress.at(step, plan, view().sheet(), view().state()), doubt, cautions, shown, offers.usual(ask));
    }

    /** What runs out, now. */
    public Meters meters() {
        return Meters.read(view().plan(), view().sheet(), view().state(), study.secondsSinceLastEntry(machine));
    }

    /** Time since the step at hand was first shown, s. */
    public double stepSeconds() {
        return Math.max(0, (machine.monotonicNanos().getAsLong() - startedNanos) / 1e9);
    }

    /** Finds the next step and the questions it takes. */
    private void begin() {
        step = Checklist.next(view().plan(), view().sheet(), view().state());
        if (away && view().state().openSession().isPresent() && step.kind() != Step.Kind.CLOSE_SESSION) {
            step = new Step(Step.Kind.RESUME, step.session(), step.position());
        }
        readings.clear();
        offers.forget();
        asks.clear();
        doubted = Optional.empty();
        startedAt = OffsetDateTime.now(machine.wall());
        startedNanos = machine.monotonicNanos().getAsLong();
        switch (step.kind()) {
            case RESUME -> asks.add(Ask.RESUME);
            case OPEN_SESSION -> askOpening(step.position().orElseThrow());
            case SOAK -> asks.add(Ask.SOAK);
            case START_CONDITIONS -> asks.addAll(BenchReading.startAsks(view().plan()));
            case RUN_TRIAL -> asks.add(Ask.SCORE);
            case CLOSE_SESSION -> asks.add(Ask.CLOSE_SESSION);
            case FINISHED -> asks.add(Ask.FINISHED);
        }
        if (step.kind() == Step.Kind.SOAK || step.kind() == Step.Kind.START_CONDITIONS || step.kind() == Step.Kind.RUN_TRIAL) {
            safety.at(view().next().orElseThrow());
            stay = isOutdoors(view().next().orElseThrow()) ? safety.stay() : Optional.empty();
            askSafety();
        }
    }

    private void askSafety() {
        if (safety.shut()) {
            asks.push(Ask.SAFETY);
        }
    }

    private void askOpening(Position position) {
        if (BenchReading.plannedAir(view().plan(), position).isPresent()) {
            asks.add(Ask.AIR);
        }
        boolean outdoors = isOutdoors(position);
        boolean cameIn = !outdoors && view().state().sessions().stream().reduce((first, second) -> second)
                .filter(session -> Meters.isOutdoors(view().plan(), session.levels())).isPresent();
        if (outdoors || cameIn) {
            asks.add(Ask.HUMIDITY);
        }
        if (outdoors) {
            asks.addAll(List.of(Ask.WIND, Ask.PRECIPITATION));
        }
        if (cameIn) {
            asks.add(Ask.DEVICE);
        }
        asks.add(Ask.OPEN_SESSION);
    }

    private boolean isOutdoors(Position position) {
        return Meters.isOutdoors(view().plan(), study.sessionLevels(position));
    }

    /**
     * Takes an answer to {@link #question()}, or a command.
     *
     * @param line as typed
     * @throws Refused if it is no answer, or could not be recorded; the same question stands then
     */
    public LogReply answer(String line) {
        if (line.length() > LONGEST_ANSWER) {
            throw new Refused(Problem.of("the answer has " + line.length() + " characters", Place.named("answer"), "a short one", "Nothing was recorded; type it again."));
        }
        String text = line.strip();
        Ask ask = asks.peek();
        Optional<Command.Said> elsewhere = Command.in(text).filter(said -> said.command() == Command.ELSEWHERE);
        if (elsewhere.isPresent()) {
            return goElsewhere(elsewhere.get().rest());
        }
        if (ask == Ask.CONFIRM_SCORE) {
            return confirm(text);
        }
        if (ask == Ask.SKIP_REASON || ask == Ask.ABORT_REASON || ask == Ask.NOTE) {
            return reason(ask, text);
        }
        Optional<Command.Said> command = Command.in(text);
        return command.isPresent() ? command(command.get()) : plain(ask, text);
    }

    /** What was not recorded stays the question; answered again, it goes into the other file. */
    private LogReply goElsewhere(String name) {
        try {
            if (name.isBlank()) {
                throw new InvalidPathException(name, "blank");
            }
            study.continueIn(view().folder().resolve(name));
        } catch (InvalidPathException broken) {
            Refused refused = new Refused(Problem.of("\"" + name + "\" is no file name here", Place.named("elsewhere"),
                    "elsewhere and the name of a new file on another medium", "Nothing was changed; type it again."));
            refused.initCause(broken);
            throw refused;
        }
        return new LogReply(study.elsewhere(), false);
    }

    private LogReply plain(Ask ask, String text) {
        return switch (ask) {
            case RESUME -> resume(text);
            case AIR, HUMIDITY, WIND, PRECIPITATION, DEVICE, DIE, BATTERY, POWER -> reading(ask, text);
            case OPEN_SESSION -> openSession(text);
            case SAFETY -> safety(text);
            case SOAK -> soaked(text);
            case SCORE -> score(text);
            case CLOSE_SESSION -> closeSession(text);
            case FINISHED -> LogReply.leaving();
            case CONFIRM_SCORE, SKIP_REASON, ABORT_REASON, NOTE -> throw new IllegalStateException(ask + " is answered before");
        };
    }

    private LogReply resume(String text) {
        boolean newSoak = text.equalsIgnoreCase("soak");
        if (!newSoak) {
            onlyEnter(text, "Enter to go on, or soak to let the device settle anew first");
        }
        study.resume(newSoak ? "with a new soak" : "");
        away = false;
        if (newSoak) {
            study.reopenSession();
        }
        begin();
        return LogReply.of("Going on. Recorded.");
    }

    private LogReply reading(Ask ask, String text) {
        Optional<Observed> reading = text.isEmpty() ? offers.byEnter(ask) : text.equals(Offers.NOT_READ) ? Optional.empty() : Optional.of(BenchReading.read(ask, text));
        reading.ifPresent(read -> readings.put(BenchReading.name(ask), read));
        List<String> stops = StartReadings.stops(view().plan(), readings);
        if (!stops.isEmpty()) {
            readings.remove(BenchReading.name(ask));
            throw new Refused(Problem.of(String.join(" ", stops), Place.named("trial " + step.position().orElseThrow().number()), "",
                    "Do not start the trial. Put it right and read again, or pause, skip or abort."));
        }
        asks.poll();
        return step.kind() == Step.Kind.START_CONDITIONS && asks.isEmpty() ? recordReadings() : LogReply.of();
    }

    private LogReply recordReadings() {
        Position position = step.position().orElseThrow();
        List<String> deviations = StartReadings.deviations(view().plan(), view().state(), position, readings);
        List<String> said = new ArrayList<>(List.of(ChecklistText.startRecorded(readings)));
        try {
            study.startConditions(position, readings, deviations);
        } catch (Refused notWritten) {
            asks.add(lastAsk());
            throw notWritten;
        }
        said.addAll(ChecklistText.deviations(deviations));
        begin();
        return new LogReply(said, false);
    }

    private Ask lastAsk() {
        List<Ask> wanted = BenchReading.startAsks(view().plan());
        return wanted.get(wanted.size() - 1);
    }

    private LogReply safety(String text) {
        List<String> said = safety.answer(text);
        if (!safety.shut()) {
            asks.poll();
        }
        return new LogReply(said, false);
    }

    private LogReply openSession(String text) {
        onlyEnter(text, "Enter to begin the session");
        Position position = step.position().orElseThrow();
        safety.beforeOpening(position, readings);
        if (safety.shut()) {
            askSafety();
            return LogReply.of();
        }
        List<String> deviations = BenchReading.sessionDeviations(view().plan(), position, readings);
        study.openSessionOf(position);
        if (!readings.isEmpty()) {
            study.sessionReadings(position.session(), readings, deviations);
        }
        safety.opened();
        begin();
        return new LogReply(ChecklistText.deviations("Session " + position.session() + " begun. Recorded.", deviations), false);
    }

    private LogReply soaked(String text) {
        boolean unknown = text.equalsIgnoreCase(UNKNOWN);
        double seconds = unknown ? Double.NaN : text.isEmpty() ? stepSeconds() : soakTime(text);
        Observed soak = unknown ? Observed.of(UNKNOWN) : Observed.of(Math.rint(seconds), "s");
        List<String> deviations = StartReadings.soakDeviations(view().plan(), step.session(), seconds);
        study.sessionReadings(step.session(), Map.of(Checklist.SOAK, soak), deviations);
        begin();
        return new LogReply(ChecklistText.deviations("Soak recorded.", deviations), false);
    }

    private static double soakTime(String text) {
        try {
            double seconds = QuantityText.read(text, Dimension.TIME, QuantityText.Bare.REFUSED);
            if (seconds >= 0 && seconds <= 7 * 86_400) {
                return seconds;
            }
            throw new Refused(Problem.of("\"" + text + "\" is out of range", Place.named("soak"), "from 0 min to 7 days", "Type it again."));
        } catch (QuantityText.Unreadable unreadable) {
            throw new Refused(Problem.of("\"" + text + "\" is no time", Place.named("soak"), "Enter when it has settled, or how long it took, such as 20 min",
                    "Type it again."));
        }
    }

    private LogReply score(String text) {
        Position position = step.position().orElseThrow();
        ScoreText score = ScoreText.read(text, view().plan().metric(), "trial " + position.number());
        if (Doubt.of(view().plan(), view().state(), position, score.score()).isPresent()) {
            doubted = Optional.of(score);
            asks.push(Ask.CONFIRM_SCORE);
            return LogReply.of();
        }
        return record(position, score);
    }

    private LogReply confirm(String text) {
        String word = text.toLowerCase(Locale.ROOT);
        if (word.equals("y") || word.equals("yes")) {
            return record(step.position().orElseThrow(), doubted.orElseThrow());
        }
        if (text.isEmpty()) {
            return LogReply.of();
        }
        asks.poll();
        doubted = Optional.empty();
        return word.equals("n") || word.equals("no") ? LogReply.of("Not recorded.") : answer(text);
    }

    private LogReply record(Position position, ScoreText score) {
        double elapsed = stepSeconds();
        study.record(position, score.score(), score.loops(), Optional.empty(), startedAt, elapsed, Source.MANUAL);
        Optional<LookPoint> before = lookDue(position.number());
        begin();
        List<String> said = ChecklistText.recorded(view().plan(), position, score);
        lookDue(0).filter(due -> !Optional.of(due).equals(before)).ifPresent(due -> said.add(ChecklistText.lookDue(due.number(), view().plan().looks())));
        return new LogReply(said, false);
    }

    /** The interim look that is due, with the trial at one position counted as still open; 0 for none. The last look is the verdict itself. */
    private Optional<LookPoint> lookDue(int open) {
        if (view().plan().looks() == 1) {
            return Optional.empty();
        }
        Set<Integer> settled = view().state().settled();
        return LookSchedule.of(view().plan(), view().sheet()).reached(number -> number != open && settled.contains(number)).filter(due -> due.lastPosition() < view().sheet().positions().size());
    }

    private LogReply closeSession(String text) {
        onlyEnter(text, "Enter to end the session");
        int session = step.session();
        List<String> said = new ArrayList<>(List.of("Session " + session + " is done. Recorded."));
        said.addAll(comingIn());
        study.endSession(SessionClosed.Ending.DONE, "");
        begin();
        return new LogReply(said, false);
    }

    /** How to come in from the open session, as far as it was out in the cold or the open air. */
    private List<String> comingIn() {
        return view().state().openSession().flatMap(open -> safety.comingIn(open.number(), Meters.isOutdoors(view().plan(), open.levels())))
                .map(FieldCardText::comingIn).orElse(List.of());
    }

    private LogReply command(Command.Said said) {
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
        asks.push(ask);
        return LogReply.of();
    }

    private LogReply undo(String why) {
        Entry undone = study.undoLast(why);
        begin();
        return LogReply.of(ChecklistText.undone(study.takenBackBy(undone).event()));
    }

    private LogReply skip(String why) {
        if (step.position().isEmpty()) {
            throw new Refused(Problem.of("no trial is at hand to skip", Place.named("skip"), "", "Nothing was recorded. To end a session early, say abort."));
        }
        return why.isEmpty() ? push(Ask.SKIP_REASON) : reason(Ask.SKIP_REASON, why);
    }

    private LogReply pause(String why) {
        if (view().state().openSession().isEmpty()) {
            return LogReply.leaving("No session is open, so there is nothing to pause. Everything is recorded.");
        }
        if (!view().state().paused()) {
            study.pause(why);
        }
        return LogReply.leaving("Paused. Recorded. Go on with: coldproof log");
    }

    private LogReply abort(String why) {
        if (view().state().openSession().isEmpty()) {
            throw new Refused(Problem.of("no session is open", Place.named("abort"), "", "Nothing was recorded. Say quit to leave."));
        }
        return why.isEmpty() ? push(Ask.ABORT_REASON) : reason(Ask.ABORT_REASON, why);
    }

    private LogReply reason(Ask ask, String text) {
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
                Position position = step.position().orElseThrow();
                study.skip(position, text);
                begin();
                return LogReply.of("Trial " + position.number() + " is left out. Recorded.");
            }
            case ABORT_REASON -> {
                int session = view().state().openSession().orElseThrow().number();
                List<String> said = new ArrayList<>(List.of("Session " + session + " is ended for good; what it has stays. Recorded."));
                said.addAll(comingIn());
                study.endSession(SessionClosed.Ending.ABORTED, text);
                away = false;
                begin();
                return new LogReply(said, false);
            }
            default -> throw new IllegalStateException(ask + " asks for no reason");
        }
    }

    private void dropReason() {
        Ask top = asks.peek();
        if (top == Ask.NOTE || top == Ask.SKIP_REASON || top == Ask.ABORT_REASON) {
            asks.poll();
        }
    }

    private static void onlyEnter(String text, String expected) {
        if (!text.isEmpty()) {
            throw new Refused(new Problem("\"" + text + "\" is no answer here", Place.named("answer"), expected + ", or a word: "
                    + String.join(", ", Command.words()), coldproof.quantity.NearestWord.of(text.length() > 40 ? "" : text, Command.words()), "Nothing was recorded."));
        }
    }

    @Override
    public void close() {
        study.close();
    }
}
