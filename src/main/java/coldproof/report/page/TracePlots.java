package coldproof.report.page;

import coldproof.report.plot.Axis;
import coldproof.report.plot.Ink;
import coldproof.report.plot.Mark;
import coldproof.report.plot.Plot;
import coldproof.report.text.TracePlot;
import coldproof.trace.Channel;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.DoubleStream;

/** Curves of each channel over time, conditions drawn over each other; where a channel is pinned its level is ruled across. */
final class TracePlots {
    private static final List<Channel> SHOWN = List.of(Channel.PACKAGE_POWER, Channel.CLOCK, Channel.DIE_TEMPERATURE, Channel.FAN, Channel.SYSTEM_POWER);
    private static final int TOGETHER = 4; // conditions in one plot: as many as there are inks

    private final List<ConditionTraces> conditions;
    private final double longest;

    TracePlots(List<ConditionTraces> conditions) {
        this.conditions = conditions;
        this.longest = conditions.stream().mapToDouble(ConditionTraces::longest).max().orElse(1);
    }

    List<Plot> plots() {
        List<Plot> plots = new ArrayList<>();
        for (int from = 0; from < conditions.size(); from += TOGETHER) {
            List<ConditionTraces> some = conditions.subList(from, Math.min(conditions.size(), from + TOGETHER));
            for (Channel channel : SHOWN) {
                boolean twice = channel == Channel.SYSTEM_POWER && some.stream().anyMatch(condition -> condition.has(Channel.PACKAGE_POWER));
                if (!twice && some.stream().anyMatch(condition -> condition.has(channel))) {
                    plots.add(plot(channel, some));
                }
            }
        }
        return plots;
    }

    private Plot plot(Channel channel, List<ConditionTraces> some) {
        List<Mark> ribbons = new ArrayList<>();
        List<Mark> lines = new ArrayList<>();
        List<Plot.Key> keys = new ArrayList<>();
        List<Double> all = new ArrayList<>();
        StringBuilder words = new StringBuilder("Median of the trials of each condition; the shaded ribbon reaches from the lowest to the highest trial.");
        for (int i = 0; i < some.size(); i++) {
            ConditionTraces condition = some.get(i);
            if (!condition.has(channel)) {
                continue;
            }
            Ink ink = Ink.ofLevel(i);
            ConditionTraces.Curve curve = condition.curve(channel, longest);
            all.addAll(curve.low());
            all.addAll(curve.high());
            if (condition.traces().size() > 1) {
                ribbons.add(new Mark.Ribbon(curve.seconds(), curve.low(), curve.high(), ink));
            }
            List<Mark.Place> places = new ArrayList<>();
            for (int k = 0; k < curve.seconds().size(); k++) {
                places.add(new Mark.Place(curve.seconds().get(k), curve.middle().get(k)));
            }
            lines.add(new Mark.Line(places, ink, stroke(i)));
            String level = TraceSection.level(condition.sustained(channel)) + " " + TracePlot.unit(channel);
            boolean pinned = condition.pinned().contains(channel);
            if (pinned) {
                lines.add(0, new Mark.Rule(Mark.Along.Y, condition.sustained(channel), Ink.GREY, Mark.Stroke.PLAIN));
            }
            keys.add(Plot.Key.of(sign(i), ink, condition.name() + (pinned ? ", pinned at " : ", sustains ") + level));
            words.append(' ').append(condition.name()).append(pinned ? " is pinned at " : " sustains ").append(level).append('.');
        }
        List<Mark> marks = new ArrayList<>(ribbons);
        marks.addAll(lines);
        String label = channel.label();
        String title = label.substring(0, 1).toUpperCase(Locale.ROOT) + label.substring(1);
        return new Plot(title, words.toString(), Axis.between("s from the start of the work", 0, Math.max(1, longest)),
                Axis.around(label + ", " + TracePlot.unit(channel), all.stream().flatMapToDouble(DoubleStream::of)), marks, keys, Plot.USUAL_HEIGHT);
    }

    private static Mark.Stroke stroke(int condition) {
        return condition == 0 ? Mark.Stroke.PLAIN : condition == 1 ? Mark.Stroke.DASHED : condition == 2 ? Mark.Stroke.DOTTED : Mark.Stroke.DASHED_DOTTED;
    }

    private static Plot.Sign sign(int condition) {
        return condition == 0 ? Plot.Sign.LINE : condition == 1 ? Plot.Sign.DASHED : condition == 2 ? Plot.Sign.DOTTED : Plot.Sign.DASHED_DOTTED;
    }
}
