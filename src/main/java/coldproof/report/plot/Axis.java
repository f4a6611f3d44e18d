package coldproof.report.plot;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;

/**
 * One axis of a plot.
 *
 * @param title what it shows, with its unit
 * @param low number at its beginning, finite
 * @param high number at its end, above {@code low}
 * @param marks where it is labelled
 */
public record Axis(String title, double low, double high, List<Mark> marks) {
    private static final int WANTED = 6;

    /**
     * A labelled place.
     *
     * @param value where
     * @param label what stands there
     */
    public record Mark(double value, String label) {}

    /** Copies; refuses an empty range. */
    public Axis {
        if (!(low < high) || !Double.isFinite(high - low)) {
            throw new IllegalArgumentException("an axis from " + low + " to " + high);
        }
        marks = List.copyOf(marks);
    }

    /** An axis that holds all finite values, with a little room at both ends. */
    public static Axis around(String title, DoubleStream values) {
        double[] finite = values.filter(Double::isFinite).toArray();
        double low = DoubleStream.of(finite).min().orElse(0);
        double high = DoubleStream.of(finite).max().orElse(1);
        double room = high > low ? 0.06 * (high - low) : Math.max(Math.abs(high) * 0.05, 1e-3);
        return between(title, low - room, high + room);
    }

    /** An axis from one number to another. */
    public static Axis between(String title, double low, double high) {
        Ticks ticks = Ticks.inside(low, high, WANTED);
        return new Axis(title, low, high, ticks.values().stream().map(value -> new Mark(value, ticks.label(value))).toList());
    }

    /** An axis of percentages with a unit at each mark. */
    public static Axis percent(String title, double low, double high) {
        Axis axis = between(title, low, high);
        return new Axis(title, low, high, axis.marks.stream().map(mark -> new Mark(mark.value(), mark.label() + " %")).toList());
    }

    /** An axis of whole places, first is 1, each with its label as far as there is room. */
    public static Axis places(String title, List<String> labels, int mostLabels) {
        int every = Math.max(1, (labels.size() + mostLabels - 1) / Math.max(1, mostLabels));
        List<Mark> marks = new ArrayList<>();
        for (int i = 0; i < labels.size(); i += every) {
            marks.add(new Mark(i + 1, labels.get(i)));
        }
        return new Axis(title, 0.4, Math.max(1, labels.size()) + 0.6, marks);
    }
}
