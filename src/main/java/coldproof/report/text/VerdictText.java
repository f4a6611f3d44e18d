package coldproof.report.text;

import coldproof.plan.Better;
import coldproof.quantity.Interval;
import coldproof.quantity.LogRatio;
import coldproof.reason.verdict.AtLeastMatters;
import coldproof.reason.verdict.Check;
import coldproof.reason.verdict.Question;
import coldproof.reason.verdict.Randomisation;
import coldproof.reason.verdict.Stratum;
import coldproof.reason.verdict.Verdict;
import coldproof.reason.verdict.Word;
import java.util.List;

/** The verdict as a person reads it: the answer first, then what it rests on. */
public final class VerdictText {
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
        text.deviations(deviations);
        return text.out.toString();
    }

    /** The verdict in one sentence, with its interval. */
    public static String sentence(Question question, Verdict verdict) {
        String names = question.factor() + " " + question.against() + " against " + question.baseline();
        if (verdict.estimate().isEmpty() || verdict.interval().isEmpty()) {
            return "The trials cannot tell what " + names + " does: " + verdict.reason() + ".";
        }
        Interval percent = verdict.interval().get().logToPercent();
        String size = Figures.change(LogRatio.toPercent(verdict.estimate().get().log())) + " (" + level(percent) + " interval "
                + Figures.change(percent.low()) + " to " + Figures.change(percent.high()) + ")";
        String matters = Figures.given(question.mattersPercent());
        return switch (verdict.word()) {
            case GAIN -> "A gain: " + names + " is better by " + size + gainTail(matters) + ".";
            case TRIFLING_GAIN -> "A trifling gain: " + names + " is better by " + size + ", less than the " + matters + " that matter.";
            case NO_MEANINGFUL_CHANGE -> "No meaningful change: " + names + " differs by " + size + ", and a change of " + matters + " or more is ruled out.";
            case TRIFLING_LOSS -> "A trifling loss: " + names + " is worse, " + size + ", by less than the " + matters + " that matter.";
            case LOSS -> "A loss: " + names + " is worse, " + size + gainTail(matters) + ".";
            case UNDECIDED -> "Undecided: " + names + " came out at " + size + (verdict.reason().isEmpty()
                    ? ", which neither shows a change nor rules out one of " + matters + "." : "; " + verdict.reason() + ".");
        };
    }

    private static String level(Interval interval) {
        double percent = 100 * interval.level();
        return (percent == Math.rint(percent) ? Long.toString((long) percent) : Figures.fixed(percent, 1)) + " %";
    }

    private String wrapped(String text) {
        return Wrap.at(columns, text);
    }

    private static String gainTail(String matters) {
        return ", possibly by the " + matters + " that matter";
    }

    private void answer() {
        out.append(verdict.decision().words()).append("   claim: ").append(question.claim().word()).append("   verdict: ").append(verdict.word().words()).append("\n\n");
        String sentence = Harmless.line(sentence(question, verdict));
        if (verdict.atLeastMatters() == AtLeastMatters.SHOWN && (verdict.word() == Word.GAIN || verdict.word() == Word.LOSS)) {
            sentence = sentence.replace(", possibly by the ", "; the whole interval lies beyond the ");
        }
        out.append(wrapped(sentence));
    }

    private void numbers() {
        out.append('\n');
        verdict.estimate().ifPresent(change -> {
            line("estimate", Figures.change(LogRatio.toPercent(change.log())) + (question.better() == Better.LOWER
                    ? " in speed; the metric itself changes by " + Figures.change(change.metricChangePercent()) : ""));
            verdict.interval().ifPresent(interval -> line(level(interval) + " interval", range(interval)));
            verdict.equivalence().ifPresent(interval -> line(level(interval) + " interval", range(interval) + "   (for \"no meaningful change\")"));
            line("test", "t = " + Figures.fixed(change.t(), 2) + ", " + degrees(change.degreesOfFreedom()) + ", " + Figures.pValue(change.p()));
        });
        if (verdict.estimate().isPresent()) {
            line("method", verdict.method());
        }
        line("tested against", verdict.stratum().words() + degreesInWords());
        verdict.randomisation().ifPresent(this::randomisation);
        line("counts", counts());
        String noise = noise();
        if (!noise.isEmpty()) {
            line("noise", noise);
        }
        line("matters", Figures.given(question.mattersPercent()) + "; false alarm " + Figures.given(100 * question.falseAlarm()));
    }

    private static String range(Interval interval) {
        Interval percent = interval.logToPercent();
        return Figures.change(percent.low()) + " to " + Figures.change(percent.high());
    }

    private static String degrees(double df) {
        return (df == Math.rint(df) ? Long.toString((long) df) : Figures.fixed(df, 1)) + " degrees of freedom";
    }

    private String degreesInWords() {
        if (verdict.stratum() == Stratum.BETWEEN_SESSIONS && verdict.sessions().size() == 2) {
            int sessions = verdict.sessions().get(0) + verdict.sessions().get(1);
            return ": " + question.factor() + " was set " + sessions + " times" + (sessions > 2 ? ", which leaves " + (sessions - 2) + " degrees of freedom" : "");
        }
        return "";
    }

    private void randomisation(Randomisation test) {
        line("randomisation", Figures.pValue(test.p()) + (test.exact() ? ", all " + count(test.assignments()) + " orders" : ", a sample of the "
                + count(test.assignments()) + " orders") + "; smallest possible p " + Figures.probability(test.smallestP()));
    }

    private static String count(double number) {
        return number < 1e7 ? Long.toString(Math.round(number)) : String.format(java.util.Locale.ROOT, "%.1e", number);
    }

    private String counts() {
        StringBuilder text = new StringBuilder();
        if (verdict.sessions().size() == 2) {
            text.append(verdict.sessions().get(0)).append(" + ").append(verdict.sessions().get(1)).append(" sessions, ");
        }
        if (verdict.trials().size() == 2) {
            text.append(verdict.trials().get(0)).append(" + ").append(verdict.trials().get(1)).append(" trials");
        }
        return text + " (" + question.baseline() + " + " + question.against() + ")";
    }

    private String noise() {
        StringBuilder text = new StringBuilder();
        verdict.runCvPercent().ifPresent(cv -> text.append("run to run ").append(Figures.percent(cv)));
        verdict.sessionCvPercent().ifPresent(cv -> text.append(text.isEmpty() ? "" : ", ").append("session to session ").append(Figures.percent(cv)));
        return text.toString();
    }

    private void settle() {
        StringBuilder text = new StringBuilder();
        verdict.moreNeeded().sessions().ifPresent(sessions -> text.append(plural(sessions, "more session")).append(" of each level"));
        verdict.moreNeeded().trials().ifPresent(trials -> text.append(text.isEmpty() ? "" : " or ")
                .append(plural(trials, verdict.stratum() == Stratum.PAIRS ? "more pair" : "more trial"))
                .append(verdict.stratum() == Stratum.PAIRS ? "" : " of each level"));
        if (!text.isEmpty()) {
            out.append('\n').append(wrapped("To settle it: about " + text + " (nine chances in ten to see a change of "
                    + Figures.given(question.mattersPercent()) + " at this noise)."));
        }
    }

    private static String plural(int count, String noun) {
        return count + " " + noun + (count == 1 ? "" : "s");
    }

    private void checks() {
        if (verdict.checks().isEmpty()) {
            return;
        }
        out.append("\nChecks (they warn, they never drop a trial):\n");
        for (Check check : verdict.checks()) {
            String mark = check.warns() ? "look  " : "fine  ";
            StringBuilder wrapped = new StringBuilder();
            Wrap.indented(mark + check.name() + ": " + Harmless.line(check.text()), "  ", columns, wrapped);
            out.append(wrapped);
        }
    }

    private void deviations(List<String> deviations) {
        if (deviations.isEmpty()) {
            return;
        }
        out.append("\nDeviations from the frozen plan:\n");
        for (String deviation : deviations) {
            Wrap.indented(Harmless.line(deviation), "  ", columns, out);
        }
    }

    private void line(String label, String text) {
        String head = String.format(java.util.Locale.ROOT, "  %-16s", label);
        StringBuilder wrapped = new StringBuilder();
        Wrap.indented(Harmless.line(text), " ".repeat(head.length()), columns, wrapped);
        out.append(head).append(wrapped.substring(head.length()));
    }
}
