package coldproof.report.text;

import coldproof.plan.Better;
import coldproof.quantity.Counted;
import coldproof.quantity.Interval;
import coldproof.quantity.LogRatio;
import coldproof.reason.verdict.Question;
import coldproof.reason.verdict.Randomisation;
import coldproof.reason.verdict.Stratum;
import coldproof.reason.verdict.Verdict;
import coldproof.report.text.Fact.Span;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The numbers of a verdict, a line each; keys are those of the JSON document. */
public final class VerdictFacts {
    private final Question question;
    private final Verdict verdict;
    private final List<Fact> facts = new ArrayList<>();

    private VerdictFacts(Question question, Verdict verdict) {
        this.question = question;
        this.verdict = verdict;
    }

    /** All lines, in the order people want them. */
    public static List<Fact> of(Question question, Verdict verdict) {
        VerdictFacts all = new VerdictFacts(question, verdict);
        all.estimate();
        if (verdict.estimate().isPresent()) {
            all.facts.add(Fact.of("method", verdict.method()));
        }
        all.facts.add(Fact.of("tested against", verdict.stratum().words() + all.degreesInWords()));
        verdict.randomisation().ifPresent(all::randomisation);
        all.facts.add(Fact.of("counts", all.counts()));
        all.noise();
        all.facts.add(Fact.of("matters", Figures.given(question.mattersPercent()) + "; false alarm " + Figures.given(100 * question.falseAlarm())));
        return all.facts;
    }

    private List<Span> change(double log, double metricChangePercent) {
        double effect = LogRatio.toPercent(log);
        List<Span> spans = new ArrayList<>(List.of(Span.number("effectPercent", effect, Figures.change(effect))));
        if (question.better() == Better.LOWER) {
            spans.add(Span.words(" in speed; the metric itself changes by "));
            spans.add(Span.number("metricChangePercent", metricChangePercent, Figures.change(metricChangePercent)));
        }
        return spans;
    }

    private void estimate() {
        verdict.bare().ifPresent(bare -> {
            List<Span> spans = change(bare.log(), bare.metricChangePercent());
            spans.add(Span.words(", but nothing tells how far to trust it"));
            facts.add(new Fact("came out at", spans));
        });
        verdict.estimate().ifPresent(change -> {
            facts.add(new Fact("estimate", change(change.log(), change.metricChangePercent())));
            verdict.interval().ifPresent(interval -> facts.add(new Fact(level(interval) + " interval", range("interval", interval))));
            verdict.equivalence().ifPresent(interval -> {
                List<Span> range = new ArrayList<>(range("equivalenceInterval", interval));
                range.add(Span.words("   (for \"no meaningful change\")"));
                facts.add(new Fact(level(interval) + " interval", range));
            });
            facts.add(new Fact("test", List.of(Span.words("t = "), Span.number("t", change.t(), Figures.fixed(change.t(), 2)), Span.words(", "),
                    Span.number("df", change.degreesOfFreedom(), whole(change.degreesOfFreedom())), Span.words((change.degreesOfFreedom() == 1 ? " degree" : " degrees") + " of freedom, "),
                    Span.number("p", change.p(), Figures.pValue(change.p())))));
        });
    }

    /** The level of an interval, such as {@code 95 %}. */
    public static String level(Interval interval) {
        return Figures.given(100 * interval.level());
    }

    private static List<Span> range(String key, Interval interval) {
        Interval percent = interval.logToPercent();
        return List.of(Span.number(key + ".low", percent.low(), Figures.change(percent.low())), Span.words(" to "),
                Span.number(key + ".high", percent.high(), Figures.change(percent.high())));
    }

    private static String whole(double number) {
        return number == Math.rint(number) ? Long.toString((long) number) : Figures.fixed(number, 1);
    }

    private String degreesInWords() {
        if (verdict.stratum() == Stratum.BETWEEN_SESSIONS && verdict.sessions().size() == 2) {
            int sessions = verdict.sessions().get(0) + verdict.sessions().get(1);
            return ": " + question.factor() + " was set " + sessions + " times" + (sessions > 2 ? ", which leaves " + Counted.degreesOfFreedom(Integer.toString(sessions - 2)) : "");
        }
        return "";
    }

    private void randomisation(Randomisation test) {
        facts.add(new Fact("randomisation", List.of(Span.number("randomisation.p", test.p(), Figures.pValue(test.p())),
                Span.words((test.exact() ? ", all " : ", a sample of the ") + count(test.assignments()) + " orders; smallest possible p "),
                Span.number("randomisation.smallestP", test.smallestP(), Figures.probability(test.smallestP())))));
    }

    private static String count(double number) {
        return number < 1e7 ? Long.toString(Math.round(number)) : String.format(Locale.ROOT, "%.1e", number);
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

    private void noise() {
        List<Span> spans = new ArrayList<>();
        verdict.runCvPercent().ifPresent(cv -> {
            spans.add(Span.words("run to run "));
            spans.add(Span.number("components.runCv", cv, Figures.percent(cv)));
        });
        verdict.sessionCvPercent().ifPresent(cv -> {
            spans.add(Span.words(spans.isEmpty() ? "session to session " : ", session to session "));
            spans.add(Span.number("components.sessionCv", cv, Figures.percent(cv)));
        });
        if (!spans.isEmpty()) {
            facts.add(new Fact("noise", spans));
        }
    }
}
