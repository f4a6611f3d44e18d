package coldproof.report.text;

import coldproof.plan.Factor;
import coldproof.plan.Level;
import coldproof.plan.Plan;
import coldproof.plan.Position;
import coldproof.reason.checklist.Ask;
import coldproof.reason.checklist.Command;
import coldproof.reason.checklist.Doubt;
import coldproof.reason.checklist.Loops;
import coldproof.reason.checklist.Meters;
import coldproof.reason.checklist.Progress;
import coldproof.reason.checklist.Question;
import coldproof.reason.checklist.ScoreText;
import coldproof.study.Event;
import coldproof.study.Observed;
import coldproof.study.TrialRecorded;
import coldproof.study.TrialSkipped;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** The words of the checklist at the bench, the same on every face. */
public final class ChecklistText {
    private static final Set<Ask> TYPED_OUT = EnumSet.of(Ask.SKIP_REASON, Ask.ABORT_REASON, Ask.NOTE, Ask.CONFIRM_SCORE, Ask.SAFETY); // no key stands for these answers

    private ChecklistText() {}

    /** {@code Trial 5 of 14, session 2 of 7: chilled, fan maximum}. */
    public static String progress(Progress progress) {
        String condition = progress.condition().isEmpty() ? "" : ": " + Harmless.line(progress.condition());
        return "Trial " + progress.trial() + " of " + progress.trials() + ", session " + progress.session() + " of " + progress.sessions() + condition;
    }

    /** What is settled and what is still to come. */
    public static String done(Progress progress) {
        String skipped = progress.skipped() == 0 ? "" : ", " + progress.skipped() + " skipped";
        return progress.recorded() + " recorded" + skipped + ", " + progress.open() + " to come";
    }

    /** What runs out, a line each; nothing where the plan sets no limit and nothing is read. */
    public static List<String> meters(Meters meters) {
        List<String> lines = new ArrayList<>();
        if (meters.outdoorsNow() || meters.outdoorsBudgetSeconds().isPresent()) {
            String budget = meters.outdoorsBudgetSeconds().isPresent() ? " of " + Figures.minutes(meters.outdoorsBudgetSeconds().getAsDouble() / 60) : "";
            lines.add("outdoors " + Figures.minutes(meters.outdoorsSeconds() / 60) + budget + (meters.outdoorsOver() ? ": OVER THE BUDGET" : ""));
        }
        if (meters.batteryPercent().isPresent()) {
            lines.add(battery(meters));
        }
        return lines;
    }

    private static String battery(Meters meters) {
        StringBuilder line = new StringBuilder("battery ").append(plain(meters.batteryPercent().getAsDouble())).append(" %");
        meters.drainPercent().ifPresent(drain -> line.append(", a trial takes ").append(plain(drain)).append(" %"));
        meters.batteryAtEnd().ifPresent(end -> line.append(", about ").append(plain(Math.max(0, end))).append(" % at the end of the session"));
        if (meters.batteryTooSmall()) {
            line.append(": WILL NOT LAST (limit ").append(plain(meters.batteryFloorPercent())).append(" %)");
        }
        return line.toString();
    }

    /** What the person is to do now, in sentences without line breaks. */
    public static List<String> instructions(Question question, Plan plan) {
        List<String> lines = new ArrayList<>();
        switch (question.ask()) {
            case RESUME -> lines.add("Session " + question.step().session() + " was broken off here. Put everything as it was, then go on.");
            case AIR -> {
                lines.add("Session " + question.step().session() + ": set " + settings(plan, question, true) + ".");
                question.shown().ifPresent(shown -> lines.add(sensor(shown) + "; type it if that sensor hangs in this air."));
            }
            case HUMIDITY, WIND, PRECIPITATION, DEVICE, OPEN_SESSION -> lines.add("Session " + question.step().session() + ": set " + settings(plan, question, true) + ".");
            case SAFETY -> question.safety().forEach(line -> lines.add(Harmless.line(line)));
            case SOAK -> lines.add("Let the device settle for " + Figures.minutes(plan.budget().soakSeconds() / 60) + ". The bell rings when the time is over.");
            case DIE, BATTERY, POWER -> {
                lines.add("Before the trial, set " + settings(plan, question, false) + "; same start state as before. Then read:");
                question.shown().ifPresent(shown -> lines.add(sensor(shown) + "."));
            }
            case SCORE -> run(question, plan, lines);
            case CONFIRM_SCORE -> question.doubt().ifPresent(doubt -> lines.add(doubt(doubt, plan)));
            case SKIP_REASON -> lines.add("Why is this trial left out? Enter alone takes it back.");
            case ABORT_REASON -> lines.add("Why does this session end for good? Its trials stay, the rest is not run. Enter alone takes it back.");
            case NOTE -> lines.add("What shall be remembered? Enter alone writes nothing.");
            case CLOSE_SESSION -> lines.add("Every trial of session " + question.step().session() + " is settled.");
            case FINISHED -> lines.add("Nothing is left to run. Next: coldproof verdict");
        }
        return lines;
    }

    private static String sensor(Observed shown) {
        return "This computer's " + Harmless.line(shown.sensor()) + " shows " + figure(shown);
    }

    private static String figure(Observed reading) {
        return reading.amount().isPresent() ? (plain(reading.amount().getAsDouble()) + " " + reading.unit()).strip() : reading.word();
    }

    private static void run(Question question, Plan plan, List<String> lines) {
        lines.add("Set " + settings(plan, question, false) + ".");
        lines.add(plan.workload().instruction().isBlank() ? "Run the workload once." : Harmless.line(plan.workload().instruction().strip()));
        lines.add("Enter the " + Harmless.line(plan.metric().name()) + "; all loops at once with spaces between, if there are loops.");
    }

    /** {@code ambient to chilled (-6 °C), fan to maximum}: the levels set once a session, or all. */
    private static String settings(Plan plan, Question question, boolean ofSession) {
        List<String> settings = new ArrayList<>();
        Position position = question.step().position().orElseThrow();
        for (Factor factor : plan.factors()) {
            if (ofSession && factor.change() != coldproof.plan.Change.PER_SESSION) {
                continue;
            }
            String name = position.levels().get(factor.name());
            String setting = factor.levels().stream().filter(level -> level.name().equals(name)).findFirst().map(Level::setting).orElse("");
            settings.add(factor.name() + " to " + name + (setting.isEmpty() || setting.equals(name) ? "" : " (" + setting + ")"));
        }
        return settings.isEmpty() ? "everything as planned" : Harmless.line(String.join(", ", settings));
    }

    private static String doubt(Doubt doubt, Plan plan) {
        double off = doubt.percentOff();
        String far = off >= 100 ? Figures.fixed(doubt.score() / doubt.usual(), 1) + " times" : Figures.fixed(Math.abs(off), 0) + " % " + (off > 0 ? "above" : "below");
        String mean = doubt.trials() == 1 ? "the one trial" : "the mean of the " + doubt.trials() + " trials";
        return Figures.score(doubt.score()) + unit(plan) + " is " + far + " " + mean + (doubt.sameCondition() ? " of this condition" : " so far") + " ("
                + Figures.score(doubt.usual()) + "). y records it as it is; or type it again.";
    }

    /** The short words before the cursor. */
    public static String prompt(Question question, Plan plan) {
        return switch (question.ask()) {
            case RESUME -> "Enter to go on, soak to settle anew";
            case AIR -> "air temperature, °C (Enter: not read)";
            case HUMIDITY -> "relative humidity, % (Enter: not read)";
            case WIND -> "wind, m/s (Enter: not read)";
            case PRECIPITATION -> "none, snow, rain or fog (Enter: not looked)";
            case DEVICE -> "coldest part of the device, °C (Enter: not read)";
            case OPEN_SESSION -> "Enter to begin the session";
            case SAFETY -> "name, or a reading";
            case SOAK -> "Enter when it has settled";
            case DIE -> "die temperature, °C" + enter(question);
            case BATTERY -> "battery, %" + enter(question);
            case POWER -> "power source, wall or battery" + enter(question);
            case SCORE -> Harmless.line(plan.metric().name()) + (plan.metric().unit().isEmpty() ? "" : ", " + Harmless.line(plan.metric().unit()));
            case CONFIRM_SCORE -> "y, or the score again";
            case SKIP_REASON, ABORT_REASON -> "reason";
            case NOTE -> "note";
            case CLOSE_SESSION -> "Enter to end the session";
            case FINISHED -> "Enter to leave";
        };
    }

    /** What Enter alone does at a reading, and how to say that it was not read where Enter says something else. */
    private static String enter(Question question) {
        return question.usual().isEmpty() ? " (Enter: not read)" : " (Enter: " + question.usual() + (question.shown().isPresent() ? "; - not read)" : ")");
    }

    /** The keys that work at a question, in a line: {@code u undo  s skip}. */
    public static String keys(Question question) {
        if (TYPED_OUT.contains(question.ask())) {
            return "";
        }
        List<String> keys = new ArrayList<>();
        for (Command command : Command.values()) {
            if (command != Command.ELSEWHERE) { // of use after a disk failure only, whose message names it
                keys.add(command.key() + " " + command.word());
            }
        }
        return String.join("  ", keys);
    }

    /** Every word that can be said, with what it does. */
    public static List<String> help() {
        List<String> lines = new ArrayList<>();
        for (Command command : Command.values()) {
            lines.add(String.format(Locale.ROOT, "%s or %-6s %s", command.key(), command.word(), command.purpose()));
        }
        lines.add("A reason or a note may follow the word at once: skip battery died");
        return lines;
    }

    /** That a trial is on the medium, and how steady its loops were. */
    public static List<String> recorded(Plan plan, Position position, ScoreText score) {
        List<String> said = new ArrayList<>();
        said.add("Trial " + position.number() + ": " + Figures.score(score.score()) + unit(plan) + ". Recorded.");
        if (!score.loops().isEmpty()) {
            Loops loops = Loops.of(score.loops(), plan.metric().better());
            said.add(loops.count() + " loops, mean " + Figures.score(loops.mean()) + ", worst " + Figures.score(loops.worst()) + ", best "
                    + Figures.score(loops.best()) + "; steadiness " + Figures.fixed(loops.steadiness(), 3) + ", drift " + Figures.change(loops.driftPercent())
                    + " from first to last.");
        }
        return said;
    }

    /** That an interim look is due. */
    public static String lookDue(int look, int looks) {
        return "Look " + look + " of " + looks + " is due now, as planned: coldproof verdict takes it. Between looks there is nothing to see.";
    }

    /** What limits the stay outdoors, in a line; {@code limitSeconds} is how long one stay may last by it. */
    public static String stay(Meters meters, String limitedBy, double limitSeconds) {
        boolean over = meters.staySeconds() > limitSeconds;
        return "this stay " + Figures.minutes(meters.staySeconds() / 60) + " of " + Figures.minutes(limitSeconds / 60) + " by " + limitedBy
                + (over ? ": TOO LONG, GO IN" : "");
    }

    /** What was taken back. */
    public static String undone(Event event) {
        String what = "An entry";
        if (event instanceof TrialRecorded trial) {
            what = "Trial " + trial.position() + " (" + Figures.score(trial.score()) + (trial.unit().isEmpty() ? "" : " " + Harmless.line(trial.unit())) + ")";
        } else if (event instanceof TrialSkipped skip) {
            what = "The skip of trial " + skip.position();
        }
        return what + " is taken back; the journal keeps both. Recorded.";
    }

    /** That something is recorded, and where it leaves the plan. */
    public static List<String> deviations(String recorded, List<String> deviations) {
        List<String> said = new ArrayList<>(List.of(recorded));
        said.addAll(deviations(deviations));
        return said;
    }

    /** Where something that is recorded leaves the plan. */
    public static List<String> deviations(List<String> deviations) {
        return deviations.stream().map(deviation -> "Not as planned, recorded as a deviation: " + Harmless.line(deviation)).toList();
    }

    /** That the start conditions are recorded, and which of them a sensor showed. */
    public static String startRecorded(Map<String, Observed> readings) {
        String shown = readings.entrySet().stream().filter(reading -> !reading.getValue().sensor().isEmpty())
                .map(reading -> reading.getKey() + " " + figure(reading.getValue()) + " (" + Harmless.line(reading.getValue().sensor()) + ")")
                .collect(Collectors.joining(", "));
        return "Start conditions recorded" + (shown.isEmpty() ? "." : "; from this computer's sensors: " + shown + ".");
    }

    private static String unit(Plan plan) {
        return plan.metric().unit().isEmpty() ? "" : " " + Harmless.line(plan.metric().unit());
    }

    private static String plain(double number) {
        return Figures.fixed(number, 1).replaceFirst("\\.0$", "");
    }
}
