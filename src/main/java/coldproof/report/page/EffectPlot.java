package coldproof.report.page;

import coldproof.quantity.Interval;
import coldproof.quantity.LogRatio;
import coldproof.report.plot.Axis;
import coldproof.report.plot.Ink;
import coldproof.report.plot.Mark;
import coldproof.report.plot.Plot;
import coldproof.report.text.Figures;
import coldproof.report.text.VerdictFacts;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The estimated changes with their intervals, and the band inside which a change does not matter. */
final class EffectPlot {
    private static final int ABOVE_AND_BELOW = 100;
    private static final int EACH = 44;

    private EffectPlot() {}

    /** The plot; empty when there is no estimate. */
    static Optional<Plot> of(StudyContent content) {
        List<StudyContent.Judged> known = content.answers().stream().filter(judged -> judged.verdict().interval().isPresent()).toList();
        if (known.isEmpty()) {
            return Optional.empty();
        }
        double margin = Math.log1p(content.plan().mattersPercent() / 100);
        double below = LogRatio.toPercent(-margin);
        double above = content.plan().mattersPercent();
        double low = Math.min(1.5 * below, known.stream().mapToDouble(judged -> finite(percent(judged).low(), 4 * below)).min().orElseThrow());
        double high = Math.max(1.5 * above, known.stream().mapToDouble(judged -> finite(percent(judged).high(), 4 * above)).max().orElseThrow());
        double room = 0.05 * (high - low);
        List<Mark> marks = new ArrayList<>();
        marks.add(new Mark.Band(Mark.Along.X, below, above, Ink.GREY, ""));
        marks.add(new Mark.Rule(Mark.Along.X, 0, Ink.GREY, Mark.Stroke.PLAIN));
        List<String> names = new ArrayList<>();
        Levels levels = new Levels(content.plan());
        for (StudyContent.Judged judged : known) {
            names.add(judged.question().against());
            double row = known.size() + 1 - names.size();
            Interval interval = percent(judged);
            judged.verdict().equivalence().map(Interval::logToPercent).ifPresent(inner -> marks.add(new Mark.Reach(row, inner.low(), Double.NaN, inner.high(),
                    Mark.Along.X, levels.ink(judged.question().against()), Mark.Weight.BOLD)));
            marks.add(new Mark.Reach(row, interval.low(), effect(judged), interval.high(), Mark.Along.X, levels.ink(judged.question().against()), Mark.Weight.FINE));
        }
        List<String> upward = new ArrayList<>(names);
        java.util.Collections.reverse(upward);
        return Optional.of(new Plot("The change, with what it could be", description(known, content), Axis.percent("change, more is better", low - room, high + room),
                Axis.places("", upward.stream().map(EffectPlot::shortened).toList(), 30), marks, keys(known, levels, content), ABOVE_AND_BELOW + EACH * known.size()));
    }

    private static String shortened(String name) {
        return name.codePointCount(0, name.length()) <= 12 ? name : name.substring(0, name.offsetByCodePoints(0, 11)) + "\u2026";
    }

    private static double finite(double value, double otherwise) {
        return Double.isFinite(value) ? value : otherwise;
    }

    private static Interval percent(StudyContent.Judged judged) {
        return judged.verdict().interval().orElseThrow().logToPercent();
    }

    private static double effect(StudyContent.Judged judged) {
        return LogRatio.toPercent(judged.verdict().estimate().orElseThrow().log());
    }

    private static List<Plot.Key> keys(List<StudyContent.Judged> known, Levels levels, StudyContent content) {
        StudyContent.Judged first = known.get(0);
        Ink ink = levels.ink(first.question().against());
        String both = "estimate with its " + VerdictFacts.level(first.verdict().interval().orElseThrow()) + " interval"
                + first.verdict().equivalence().map(inner -> " (bold: " + VerdictFacts.level(inner) + ")").orElse("");
        return List.of(Plot.Key.of(Plot.Sign.REACH, ink, both), Plot.Key.of(Plot.Sign.BAND, Ink.GREY, "too small to matter: less than " + Figures.given(content.plan().mattersPercent())));
    }

    private static String description(List<StudyContent.Judged> known, StudyContent content) {
        StringBuilder text = new StringBuilder();
        for (StudyContent.Judged judged : known) {
            Interval interval = percent(judged);
            text.append(judged.question().against()).append(" against ").append(judged.question().baseline()).append(": ").append(Figures.change(effect(judged)))
                    .append(", interval ").append(Figures.change(interval.low())).append(" to ").append(Figures.change(interval.high())).append(". ");
        }
        return text.append("Changes inside the shaded band are smaller than ").append(Figures.given(content.plan().mattersPercent())).append('.').toString();
    }
}
