package coldproof.report.page;

import coldproof.report.plot.Axis;
import coldproof.report.plot.Ink;
import coldproof.report.plot.Mark;
import coldproof.report.plot.Plot;
import coldproof.report.text.Figures;
import coldproof.trace.Phase;
import java.util.ArrayList;
import java.util.List;

/** When the boost ends and when the sustained level is reached, under each condition; thinner as the device settles. */
final class PhasePlot {
    private static final int ABOVE_AND_BELOW = 70;
    private static final int EACH = 34;

    private PhasePlot() {}

    static Plot of(List<ConditionTraces> conditions) {
        List<Mark> marks = new ArrayList<>();
        List<Axis.Mark> rows = new ArrayList<>();
        StringBuilder words = new StringBuilder();
        int count = conditions.size();
        for (int i = 0; i < count; i++) {
            double row = count - i;
            rows.add(new Axis.Mark(row, Integer.toString(i + 1)));
            words.append(i + 1).append(": ").append(conditions.get(i).name());
            for (Phase.Kind kind : Phase.Kind.values()) {
                List<Double> stretch = conditions.get(i).stretch(kind);
                if (!stretch.isEmpty()) {
                    marks.add(new Mark.Bar(row, stretch.get(0), stretch.get(1), half(kind), ink(kind)));
                    words.append(", ").append(kind.label()).append(' ').append(Figures.fixed(stretch.get(0), 0)).append(" to ").append(Figures.fixed(stretch.get(1), 0)).append(" s");
                }
            }
            words.append(". ");
        }
        List<Plot.Key> keys = new ArrayList<>();
        for (Phase.Kind kind : Phase.Kind.values()) {
            keys.add(Plot.Key.of(Plot.Sign.BAR, ink(kind), kind.label() + thickness(kind)));
        }
        double longest = conditions.stream().mapToDouble(ConditionTraces::longest).max().orElse(1);
        return new Plot("Phases of the work", words.toString().strip(), Axis.between("s from the start of the work", 0, Math.max(1, longest)),
                new Axis("condition", 0.4, count + 0.6, rows), marks, keys, ABOVE_AND_BELOW + EACH * count);
    }

    private static double half(Phase.Kind kind) {
        return switch (kind) {
            case BOOST -> 0.36;
            case SETTLING -> 0.22;
            case SUSTAINED -> 0.1;
        };
    }

    private static String thickness(Phase.Kind kind) {
        return switch (kind) {
            case BOOST -> " (thick): draws more than it can sustain";
            case SETTLING -> " (middling): on its way to the level it holds";
            case SUSTAINED -> " (thin): at the level it holds";
        };
    }

    private static Ink ink(Phase.Kind kind) {
        return switch (kind) {
            case BOOST -> Ink.RUST;
            case SETTLING -> Ink.PLUM;
            case SUSTAINED -> Ink.DEEP_BLUE;
        };
    }
}
