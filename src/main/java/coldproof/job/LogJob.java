package coldproof.job;

import coldproof.plan.Plan;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import coldproof.reason.checklist.Ask;
import coldproof.reason.checklist.Command;
import coldproof.reason.checklist.Doubt;
import coldproof.reason.checklist.Meters;
import coldproof.reason.checklist.Progress;
import coldproof.reason.checklist.Question;
import coldproof.reason.checklist.Step;
import coldproof.reason.safety.OutdoorBudget;
import coldproof.study.Observed;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

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
    private final LogPlace place;
    private final TrialAnswers trials;
    private final SessionAnswers sessions;
    private final LogCommands commands;

    private LogJob(BenchStudy study, Machine machine) {
        this.study = study;
        this.machine = machine;
        place = new LogPlace(study, machine);
        trials = new TrialAnswers(study, place);
        sessions = new SessionAnswers(study, place);
        commands = new LogCommands(study, place);
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
        return place.stay();
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
        Step step = place.step();
        Optional<Doubt> doubt = place.doubted().flatMap(score -> Doubt.of(plan, view().state(), step.position().orElseThrow(), score.score()));
        Ask ask = place.asks().peek();
        List<String> cautions = ask == Ask.SAFETY ? place.safety().lines() : List.of();
        Optional<Observed> shown = place.offers().shown(ask);
        return new Question(ask, step, Progress.at(step, plan, view().sheet(), view().state()), doubt, cautions, shown, place.offers().usual(ask));
    }

    /** What runs out, now. */
    public Meters meters() {
        return Meters.read(view().plan(), view().sheet(), view().state(), study.secondsSinceLastEntry(machine));
    }

    /** Time since the step at hand was first shown, s. */
    public double stepSeconds() {
        return place.stepSeconds();
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
        Ask ask = place.asks().peek();
        Optional<Command.Said> elsewhere = Command.in(text).filter(said -> said.command() == Command.ELSEWHERE);
        if (elsewhere.isPresent()) {
            return commands.goElsewhere(elsewhere.get().rest());
        }
        if (ask == Ask.CONFIRM_SCORE) {
            return trials.confirm(text).orElseGet(() -> answer(text));
        }
        if (ask == Ask.SKIP_REASON || ask == Ask.ABORT_REASON || ask == Ask.NOTE) {
            return commands.reason(ask, text);
        }
        Optional<Command.Said> command = Command.in(text);
        return command.isPresent() ? commands.command(command.get()) : plain(ask, text);
    }

    private LogReply plain(Ask ask, String text) {
        return switch (ask) {
            case RESUME -> sessions.resume(text);
            case AIR, HUMIDITY, WIND, PRECIPITATION, DEVICE, DIE, BATTERY, POWER -> sessions.reading(ask, text);
            case OPEN_SESSION -> sessions.openSession(text);
            case SAFETY -> sessions.safety(text);
            case SOAK -> sessions.soaked(text);
            case SCORE -> trials.score(text);
            case CLOSE_SESSION -> sessions.closeSession(text);
            case FINISHED -> LogReply.leaving();
            case CONFIRM_SCORE, SKIP_REASON, ABORT_REASON, NOTE -> throw new IllegalStateException(ask + " is answered before");
        };
    }

    /** Refuses anything but Enter. */
    static void onlyEnter(String text, String expected) {
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
