package coldproof.report.text;

import coldproof.plan.Plan;
import coldproof.quantity.Interval;
import coldproof.quantity.LogRatio;
import coldproof.reason.verdict.AtLeastMatters;
import coldproof.reason.verdict.Check;
import coldproof.reason.verdict.Question;
import coldproof.reason.verdict.Verdict;
import java.util.List;
import java.util.Optional;

/** The verdict as a person reads it: the answer first, then what it rests on. */
public final class VerdictText {
    private static final int LABEL_COLUMNS = 16;

    private final StringBuilder out = new StringBuilder();
    private final Question question;
    private final Verdict verdict;
    private final int columns;

    private VerdictText(Question question, Verdict verdict, int columns) {
        this.question = question;
        this.verdict = verdict;
        this.columns = columns;
    }

    /** The whole answer for a screen of so many columns. */
    public static String of(Question question, Verdict verdict, List<String> deviations, int columns) {
        VerdictText text = new VerdictText(question, verdict, columns);
        text.answer();
        text.numbers();
        text.settle();
        text.checks();
        return text.out.append(deviations(deviations, columns)).toString();
    }

    /** What stands above the verdict on a study: its question, its device, and whether its data are simulated. */
    public static String heading(Plan plan, Optional<String> simulated, int columns) {
        String mark = simulated.map(text -> Wrap.at(columns, "SIMULATED DATA: " + Harmless.line(text) + ".")).orElse("");
        return Wrap.at(columns, Harmless.line(plan.title())) + Wrap.at(columns, Harmless.line(plan.device())) + mark + "\n";
    }

    /** The verdict in one sentence, with its interval. */
    public static String sentence(Question question, Verdict verdict) {
        String names = question.factor() + " " + question.against() + " against " + question.baseline();
        if (verdict.estimate().isEmpty() || verdict.interval().isEmpty()) {
            return "The trials cannot tell what " + names + " does: " + verdict.reason() + ".";
        }
        Interval percent = verdict.interval().get().logToPercent();
        String size = Figures.change(LogRatio.toPercent(verdict.estimate().get().log())) + " (" + VerdictFacts.level(percent) + " interval "
                + Figures.change(percent.low()) + " to " + Figures.change(percent.high()) + ")";
        String matters = Figures.given(question.mattersPercent());
        return switch (verdict.word()) {
            case GAIN -> "A gain: " + names + " is better by " + size + beyond(verdict, matters) + ".";
            case TRIFLING_GAIN -> "A trifling gain: " + names + " is better by " + size + ", less than the " + matters + " that matter.";
            case NO_MEANINGFUL_CHANGE -> "No meaningful change: " + names + " differs by " + size + ", and a change of " + matters + " or more is ruled out.";
            case TRIFLING_LOSS -> "A trifling loss: " + names + " is worse, " + size + ", by less than the " + matters + " that matter.";
            case LOSS -> "A loss: " + names + " is worse, " + size + beyond(verdict, matters) + ".";
            case UNDECIDED -> "Undecided: " + names + " came out at " + size + (verdict.reason().isEmpty()
                    ? ", which neither shows a change nor rules out one of " + matters + "." : "; " + verdict.reason() + ".");
        };
    }

    private String wrapped(String text) {
        return Wrap.at(columns, text);
    }

    private static String beyond(Verdict verdict, String matters) {
        return (verdict.atLeastMatters() == AtLeastMatters.SHOWN ? "; the whole interval lies beyond the " : ", possibly by the ") + matters + " that matter";
    }

    private void answer() {
        out.append(verdict.decision().words()).append("   claim: ").append(question.claim().word()).append("   verdict: ").append(verdict.word().words()).append("\n\n");
        out.append(wrapped(Harmless.line(sentence(question, verdict))));
    }

    private void numbers() {
        out.append('\n');
        VerdictFacts.of(question, verdict).forEach(fact -> Wrap.labelled(fact.label(), LABEL_COLUMNS, Harmless.line(fact.text()), columns, out));
    }

    private void settle() {
        String text = settling(verdict);
        if (!text.isEmpty()) {
            out.append('\n').append(wrapped(text));
        }
    }

    /** What would probably settle it, in a sentence, or why that cannot be said; empty when nothing is missing. */
    public static String settling(Verdict verdict) {
        String text = verdict.moreNeeded().text();
        boolean counted = verdict.moreNeeded().sessions().isPresent() || verdict.moreNeeded().trials().isPresent();
        return text.isEmpty() ? "" : Harmless.line((counted ? "To settle it: " : "") + text + ".");
    }

    private void checks() {
        if (verdict.checks().isEmpty()) {
            return;
        }
        out.append("\nChecks (they warn, they never drop a trial):\n");
        for (Check check : verdict.checks()) {
            Wrap.hanging(check.warns() ? "  look  " : "  fine  ", check.name() + ": " + Harmless.line(check.text()), columns, out);
        }
    }

    /** Where the study left its plan; empty where it did not. */
    static String deviations(List<String> deviations, int columns) {
        if (deviations.isEmpty()) {
            return "";
        }
        StringBuilder out = new StringBuilder("\nDeviations from the frozen plan:\n");
        deviations.forEach(deviation -> Wrap.point(Harmless.line(deviation), columns, out));
        return out.toString();
    }
}
