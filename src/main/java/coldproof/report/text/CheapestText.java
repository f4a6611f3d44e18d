package coldproof.report.text;

import coldproof.plan.Claim;
import coldproof.plan.Plan;
import coldproof.reason.sizing.CheapestStudy;
import coldproof.reason.sizing.PlanAdvice;
import coldproof.reason.sizing.PlannedStudy;
import coldproof.reason.sizing.StudyLimits.Limit;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/** The cheapest plan for people: what it is, what else there was, and why. */
public final class CheapestText {
    private final CheapestStudy study;
    private final PlanAdvice advice;
    private final int columns;
    private final StringBuilder out = new StringBuilder();

    private CheapestText(CheapestStudy study, int columns) {
        this.study = study;
        this.advice = study.advice();
        this.columns = columns;
    }

    /** The answer with its reasons. */
    public static String of(CheapestStudy study, int columns) {
        return new CheapestText(study, columns).text();
    }

    private String text() {
        head();
        comparison();
        frontier();
        why();
        limits();
        layout();
        return out.toString();
    }

    private void head() {
        Plan plan = study.plan();
        int changes = plan.compare().against().size();
        String size = Figures.given(plan.mattersPercent());
        String what = plan.claim() == Claim.GAIN ? changes == 1 ? "a change of " + size : "each of " + changes + " changes of " + size + ", judged together,"
                : (changes == 1 ? "" : "of each of " + changes + " changes, judged together, ") + "that nothing changes by " + size + " or more";
        say("To show " + what + " with " + Figures.share(advice.wantedPower()) + " power, a minute outdoors counting as "
                + number(study.terms().outdoorWeight()) + " indoors; all " + advice.examined() + " plans within reach were priced.");
        if (advice.best().isEmpty()) {
            say("No plan within the limits reaches that power." + advice.strongest().map(plan1 -> " The strongest reaches " + Figures.share(plan1.power()) + ".")
                    .orElse(" No study at all fits them."));
        }
        out.append('\n');
    }

    private void comparison() {
        TextTable table = table("plan");
        advice.best().ifPresent(plan -> row(table, "cheapest", plan));
        if (advice.best().isEmpty()) {
            advice.strongest().ifPresent(plan -> row(table, "strongest", plan));
        }
        advice.runnersUp().forEach(plan -> row(table, "next best", plan));
        advice.equal().ifPresent(plan -> row(table, "equal numbers", plan));
        row(table, "as planned", study.planned(), study.plannedPerLevel());
        out.append(table.text("  "));
    }

    private void frontier() {
        if (advice.frontier().size() < 2) {
            return;
        }
        out.append('\n');
        say(anyOutdoors() ? "Power against time outdoors; no plan beats these in both:" : "Power against time; no plan beats these in both:");
        TextTable table = table("");
        advice.frontier().forEach(plan -> row(table, advice.best().filter(plan::equals).isPresent() ? "cheapest" : "", plan));
        out.append(table.text("  "));
    }

    private boolean anyOutdoors() {
        return study.cost().anyOutdoors();
    }

    private TextTable table(String first) {
        List<String> levels = study.plan().comparesSessions()
                ? List.of(study.plan().compare().baseline(), changed("changed")) : List.of("sessions", "");
        return new TextTable(first, ">" + Harmless.line(levels.get(0)), ">" + Harmless.line(levels.get(1)), ">trials", ">power", ">in all", ">outdoors",
                ">outings");
    }

    /** The changed level, or a word for all of them. */
    private String changed(String all) {
        List<String> against = study.plan().compare().against();
        return against.size() == 1 ? against.get(0) : all;
    }

    private void row(TextTable table, String name, PlannedStudy plan) {
        row(table, name, plan, study.perLevel(plan));
    }

    private void row(TextTable table, String name, PlannedStudy plan, List<Integer> perLevel) {
        boolean shared = !study.plan().comparesSessions();
        int most = perLevel.stream().skip(1).mapToInt(Integer::intValue).max().orElse(0);
        String each = most == plan.againstSessions() ? Integer.toString(most) : plan.againstSessions() + " to " + most;
        table.row(name, Integer.toString(plan.baselineSessions()), shared ? "" : each,
                Integer.toString(plan.trialsPerCondition()), Double.isNaN(plan.power()) ? "-" : Figures.share(plan.power()),
                Figures.minutes(plan.totalSeconds() / 60), Figures.minutes(plan.outdoorsSeconds() / 60), Integer.toString(plan.outings()));
    }

    private void why() {
        out.append('\n');
        if (study.plan().comparesSessions()) {
            say(String.format(Locale.ROOT, "Why: opening a session costs %s (%s) and %s; for unequal costs sessions go as the root of their ratio, here %.1f of "
                    + "%s for one of %s.", Figures.minutes(study.cost().baseline().openingSeconds() / 60), Harmless.line(study.plan().compare().baseline()),
                    openings(), advice.ratioOptimum(), Harmless.line(study.plan().compare().baseline()), Harmless.line(changed("each change"))));
        }
        say(Double.isInfinite(advice.trialsOptimum()) ? "Without session noise, or with both levels in every session, few long sessions are cheapest."
                : String.format(Locale.ROOT, "Trials in a session pay until about %.1f, the root of (opening / trial x run variance / session variance); beyond that the "
                        + "session noise stays.", advice.trialsOptimum()));
    }

    private String openings() {
        Plan plan = study.plan();
        return plan.compare().against().stream().map(level -> Figures.minutes(plan.budget().openingSeconds(level) / 60) + " (" + Harmless.line(level) + ")")
                .collect(Collectors.joining(", "));
    }

    private void limits() {
        for (Map.Entry<Limit, PlannedStudy> lifted : advice.lifted().entrySet()) {
            PlannedStudy plan = lifted.getValue();
            say("look: the limit on " + words(lifted.getKey()) + " binds. Without it: "
                    + study.perLevel(plan).stream().map(String::valueOf).collect(Collectors.joining(" + ")) + " sessions of " + plan.trialsPerCondition() + " trials each, "
                    + Figures.minutes(plan.totalSeconds() / 60) + ", " + Figures.minutes(plan.outdoorsSeconds() / 60) + " outdoors, "
                    + Figures.share(plan.power()) + " power.");
        }
    }

    private static String words(Limit limit) {
        return switch (limit) {
            case OUTDOORS_PER_OUTING -> "time outdoors in one outing";
            case OUTDOORS_IN_ALL -> "time outdoors in all";
            case DAYLIGHT -> "daylight";
            case BATTERY -> "the battery";
            case SESSIONS_PER_OUTING -> "sessions in one outing";
            case OUTINGS_PER_DAY -> "outings in one day";
            case DAYS -> "days";
            case TIME_IN_ALL -> "time in all";
            case SESSIONS_PER_LEVEL -> "sessions of a level";
            case TRIALS_PER_CONDITION -> "trials in a session";
        };
    }

    private void layout() {
        advice.best().or(advice::strongest).ifPresent(best -> {
            out.append("\nIn the plan:\n");
            lines(study, best).forEach(line -> out.append("  ").append(Harmless.line(line)).append('\n'));
            study.together(best).ifPresent(together -> say(together.text()));
            say("Looks before the end save more still: coldproof rehearse shows what three of them do to the cheapest layout.");
            if (study.oddlyMirrored(best)) {
                say("look: an odd number of trials of each condition is not mirrored in full; one more or fewer guards better against drift.");
            }
        });
    }

    /** The lines of a plan file. */
    private static List<String> lines(CheapestStudy study, PlannedStudy best) {
        coldproof.plan.Layout layout = study.layout(best);
        StringBuilder counts = new StringBuilder();
        layout.counts().forEach((level, count) -> counts.append(counts.isEmpty() ? "" : ", ").append(level.isEmpty() ? "" : level + ": ").append(count));
        String sessions = layout.counts().containsKey("") ? counts.toString() : "{" + counts + "}";
        return List.of("layout:", "  sessions: " + sessions, "  trials per condition: " + layout.trialsPerCondition(), "  order: " + layout.order().word());
    }

    private void say(String text) {
        out.append(Wrap.at(columns, text));
    }

    private static String number(double value) {
        return value == Math.rint(value) ? Long.toString((long) value) : String.format(Locale.ROOT, "%.1f", value);
    }
}
