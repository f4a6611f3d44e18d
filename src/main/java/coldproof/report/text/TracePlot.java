package coldproof.report.text;

import coldproof.trace.Channel;
import coldproof.trace.Phase;
import coldproof.trace.Series;
import coldproof.trace.Work;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * A log drawn with plain characters: a panel for each of clock, temperature, power and fan over one time axis, with the phases below. Each
 * column of a panel is the mean of its stretch of time; {@code '} stands in the upper half of its line, {@code .} in the lower.
 */
public final class TracePlot {
    private static final List<Channel> PANELS = List.of(Channel.CLOCK, Channel.DIE_TEMPERATURE, Channel.PACKAGE_POWER, Channel.FAN);
    private static final int ROWS = 5;
    private static final int MARGIN = 9; // room for the scale on the left
    private static final int NARROWEST = 20;

    private final Series series;
    private final Work work;
    private final int width;
    private final double from;
    private final double step;
    private final StringBuilder out = new StringBuilder();

    private TracePlot(Series series, Work work, int columns) {
        this.series = series;
        this.work = work;
        this.width = Math.max(NARROWEST, columns - MARGIN - 1);
        this.from = series.seconds(0) - work.startSeconds();
        this.step = (series.seconds(series.size() - 1) - series.seconds(0)) / (width - 1);
    }

    /** The plot for a screen of so many columns; empty when none of its channels was measured. */
    public static String of(Series series, Work work, List<Phase> phases, int columns) {
        TracePlot plot = new TracePlot(series, work, columns);
        return plot.draw(phases);
    }

    private String draw(List<Phase> phases) {
        List<Channel> shown = new ArrayList<>(PANELS.stream().filter(series::has).toList());
        if (!series.has(Channel.PACKAGE_POWER) && series.has(Channel.SYSTEM_POWER)) {
            shown.add(Channel.SYSTEM_POWER);
        }
        if (shown.isEmpty() || !(step > 0)) {
            return "";
        }
        shown.forEach(this::panel);
        axis();
        phases(phases);
        return out.toString();
    }

    private void panel(Channel channel) {
        double[] means = means(channel);
        double low = Arrays.stream(means).filter(value -> !Double.isNaN(value)).min().orElse(Double.NaN);
        double high = Arrays.stream(means).filter(value -> !Double.isNaN(value)).max().orElse(Double.NaN);
        if (Double.isNaN(low)) {
            return;
        }
        double span = Math.max(high - low, 1e-9 * Math.max(1, Math.abs(high)));
        char[][] cells = new char[ROWS][width];
        for (char[] row : cells) {
            Arrays.fill(row, ' ');
        }
        for (int i = 0; i < width; i++) {
            if (!Double.isNaN(means[i])) {
                int half = (int) Math.round((high - means[i]) / span * (2 * ROWS - 1));
                cells[half / 2][i] = half % 2 == 0 ? '\'' : '.';
            }
        }
        out.append(channel.label()).append(", ").append(unit(channel)).append('\n');
        for (int row = 0; row < ROWS; row++) {
            String scale = row == 0 ? number(high) : row == ROWS - 1 && high > low ? number(low) : "";
            out.append(" ".repeat(Math.max(0, MARGIN - 2 - scale.length()))).append(scale).append(" |").append(new String(cells[row]).stripTrailing()).append('\n');
        }
    }

    /** Mean of each stretch; where it has no row, the value of the row before it, unless a gap lies there. */
    private double[] means(Channel channel) {
        double[] sums = new double[width];
        int[] counts = new int[width];
        for (int i = 0; i < series.size(); i++) {
            double value = series.value(channel, i);
            if (!Double.isNaN(value)) {
                int at = column(series.seconds(i) - work.startSeconds());
                sums[at] += value;
                counts[at]++;
            }
        }
        int reach = (int) Math.ceil(2.5 * series.stepSeconds() / step);
        double last = Double.NaN;
        int since = 0;
        for (int i = 0; i < width; i++) {
            if (counts[i] > 0) {
                last = sums[i] / counts[i];
                since = 0;
            } else {
                since++;
            }
            sums[i] = since <= reach ? last : Double.NaN;
        }
        return sums;
    }

    private int column(double secondsFromStart) {
        return (int) Math.max(0, Math.min(width - 1, Math.round((secondsFromStart - from) / step)));
    }

    private void axis() {
        char[] line = new char[width];
        Arrays.fill(line, '-');
        char[] labels = new char[width + 8];
        Arrays.fill(labels, ' ');
        double spacing = tick(width * step / Math.max(2, width / 12.0));
        int free = 0;
        for (double at = Math.ceil(from / spacing) * spacing; at <= from + step * (width - 1) + 1e-9; at += spacing) {
            int column = column(at);
            line[column] = '+';
            String label = Long.toString(Math.round(at));
            if (column >= free) {
                label.getChars(0, label.length(), labels, column);
                free = column + label.length() + 2;
            }
        }
        out.append(" ".repeat(MARGIN - 1)).append('+').append(line).append('\n');
        out.append(" ".repeat(MARGIN)).append(new String(labels).stripTrailing()).append("\n");
    }

    /** A round number of seconds or minutes, not less than this. */
    private static double tick(double atLeast) {
        for (double round : new double[] {1, 2, 5, 10, 20, 30, 60, 120, 300, 600, 1200, 1800, 3600, 7200, 14_400, 43_200, 86_400}) {
            if (round >= atLeast) {
                return round;
            }
        }
        return 86_400 * Math.ceil(atLeast / 86_400);
    }

    private void phases(List<Phase> phases) {
        char[] line = new char[width + 1];
        Arrays.fill(line, ' ');
        StringBuilder tooShort = new StringBuilder();
        for (Phase phase : phases) {
            int first = column(phase.fromSeconds());
            int last = Math.max(first, column(phase.toSeconds()));
            String label = phase.kind().label();
            Arrays.fill(line, first, last, '=');
            line[first] = '|';
            line[last] = '|';
            if (last - first > label.length()) {
                label.getChars(0, label.length(), line, first + (last - first - label.length() + 1) / 2);
            } else {
                tooShort.append(tooShort.isEmpty() ? "" : ", ").append(label);
            }
        }
        out.append(" ".repeat(MARGIN)).append(new String(line).stripTrailing()).append('\n');
        if (!tooShort.isEmpty()) {
            out.append(" ".repeat(MARGIN)).append("(too short to name above: ").append(tooShort).append(")\n");
        }
        out.append(" ".repeat(MARGIN)).append("s from the start of the work\n");
    }

    /** The unit a channel is kept in. */
    public static String unit(Channel channel) {
        return switch (channel.kind()) {
            case TIME -> "s";
            case TEMPERATURE -> "°C";
            case POWER -> "W";
            case CLOCK -> "MHz";
            case ROTATION -> "rpm";
            case SHARE -> "%";
        };
    }

    private static String number(double value) {
        return Figures.fixed(value, Math.abs(value) >= 1000 ? 0 : 1);
    }
}
