package coldproof.report.page;

import coldproof.quantity.Interval;
import coldproof.quantity.LogRatio;
import coldproof.reason.verdict.Compared;
import coldproof.report.plot.Axis;
import coldproof.report.plot.Ink;
import coldproof.report.plot.Mark;
import coldproof.report.plot.Plot;
import coldproof.report.text.Figures;
import coldproof.report.text.VerdictFacts;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/** The estimated changes with their intervals, and the band inside which a change does not matter. */
final class EffectPlot {
    private static final int ABOVE_AND_BELOW = 100;
    private static final int EACH = 44;

    private EffectPlot() {}

    /** The plot; empty when there is no estimate. */
    static Optional<Plot> of(StudyContent content) {
        List<Compared> known = content.answers().stream().filter(one -> one.verdict().interval().isPresent()).toList();
        if (known.isEmpty()) {
            return Optional.empty();
        }
        double margin = Math.log1p(content.plan().mattersPercent() / 100);
        double below = LogRatio.toPercent(-margin);
        double above = content.plan().mattersPercent();
        double low = Math.min(1.5 * below, known.stream().mapToDouble(one -> finite(percent(one).low(), 4 * below)).min().orElseThrow());
        double high = Math.max(1.5 * above, known.stream().mapToDouble(one -> finite(percent(one).high(), 4 * above)).max().orElseThrow());
        double room = 0.05 * (high - low);
        List<Mark> marks = new ArrayList<>();
        marks.add(new Mark.Band(Mark.Along.X, below, above, Ink.GREY, ""));
        marks.add(new Mark.Rule(Mark.Along.X, 0, Ink.GREY, Mark.Stroke.PLAIN));
        List<String> names = new ArrayList<>();
        Levels levels = new Levels(content.plan());
        for (Compared one : known) {
            names.add(one.question().against());
            double row = known.size() + 1 - names.size();
            Interval interval = percent(one);
            one.verdict().equivalence().map(Interval::logToPercent).ifPresent(inner -> marks.add(new Mark.Reach(row, inner.low(), Double.NaN, inner.high(),
                    Mark.Along.X, levels.ink(one.question().against()), Mark.Weight.BOLD)));
            marks.add(new Mark.Reach(row, interval.low(), effect(one), interval.high(), Mark.Along.X, levels.ink(one.question().against()), Mark.Weight.FINE));
        }
        List<String> upward = new ArrayList<>(names);
        Collections.reverse(upward);
        return Optional.of(new Plot("The change, with what it could be", description(known, content), Axis.percent("change, more is better", low - room, high + room),
                Axis.places("", upward.stream().map(EffectPlot::shortened).toList(), 30), marks, keys(known, levels, content), ABOVE_AND_BELOW + EACH * known.size()));
    }

    private static String shortened(String name) {
        return name.codePointCount(0, name.length()) <= 12 ? name : name.substring(0, name.offsetByCodePoints(0, 11)) + "\u2026";
    }

    private static double finite(double value, double otherwise) {
        return Double.isFinite(value) ? value : otherwise;
    }

    private static Interval percent(Compared one) {
        return one.verdict().interval().orElseThrow().logToPercent();
    }

    private static double effect(Compared one) {
        return LogRatio.toPercent(one.verdict().estimate().orElseThrow().log());
    }

    private static List<Plot.Key> keys(List<Compared> known, Levels levels, StudyContent content) {
        Compared first = known.get(0);
        Ink ink = levels.ink(first.question().against());
        String both = "estimate with its " + VerdictFacts.level(first.verdict().interval().orElseThrow()) + " interval"
                + first.verdict().equivalence().map(inner -> " (bold: " + VerdictFacts.level(inner) + ")").orElse("");
        return List.of(Plot.Key.of(Plot.Sign.REACH, ink, both), Plot.Key.of(Plot.Sign.BAND, Ink.GREY, "too small to matter: less than " + Figures.given(content.plan().mattersPercent())));
    }

    private static String description(List<Compared> known, StudyContent content) {
        StringBuilder text = new StringBuilder();
        for (Compared one : known) {
            Interval interval = percent(one);
            text.append(one.question().against()).append(" against ").append(one.question().baseline()).append(": ").append(Figures.change(effect(one)))
                    .append(", interval ").append(Figures.change(interval.low())).append(" to ").append(Figures.change(interval.high())).append(". ");
        }
        return text.append("Changes inside the shaded band are smaller than ").append(Figures.given(content.plan().mattersPercent())).append('.').toString();
    }
}
