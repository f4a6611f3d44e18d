package coldproof.trace;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** Finds the work in a log: the longest stretch in which the device is busy; pauses of a few seconds, as between loops, belong to it. */
final class WorkFinder {
    private static final double SHORT_PAUSE = 15; // s
    private static final double CLEAR_SHARE = 15; // points of utilisation between rest and work

    private final Series series;

    private WorkFinder(Series series) {
        this.series = series;
    }

    /** The work; the whole log when nothing shows where it begins; empty when there are fewer than three rows. */
    static Optional<Work> find(Series series) {
        if (series.size() < 3) {
            return Optional.empty();
        }
        WorkFinder finder = new WorkFinder(series);
        for (Channel channel : new Channel[] {Channel.UTILISATION, Channel.PACKAGE_POWER, Channel.SYSTEM_POWER, Channel.CLOCK}) {
            Optional<Work> work = finder.by(channel);
            if (work.isPresent()) {
                return work;
            }
        }
        return Optional.of(new Work(0, series.size(), series.seconds(0) - series.samplingSeconds(), series.seconds(series.size() - 1), Channel.TIME));
    }

    private Optional<Work> by(Channel channel) {
        if (!series.has(channel)) {
            return Optional.empty();
        }
        double low = lowest(channel);
        double high = high(channel);
        boolean share = channel == Channel.UTILISATION;
        boolean clear = share ? high - low > CLEAR_SHARE : high > (channel == Channel.CLOCK ? 1.3 : 1.5) * low;
        if (!clear) {
            return Optional.empty();
        }
        // Power falls far after a boost, so its border is the geometric mean: half way between rest and work on a scale of ratios.
        double border = share ? (low + high) / 2 : Math.sqrt(Math.max(low, 1e-3 * high) * high);
        return longest(channel, border).map(stretch -> refined(stretch[0], stretch[1], channel));
    }

    private Optional<int[]> longest(Channel channel, double border) {
        List<int[]> stretches = new ArrayList<>();
        boolean busy = false;
        for (int i = 0; i < series.size(); i++) {
            double value = series.value(channel, i);
            if (!Double.isNaN(value)) {
                boolean now = value > border;
                if (now && !busy) {
                    open(stretches, i);
                }
                busy = now;
            }
            if (busy && !Double.isNaN(value)) {
                stretches.get(stretches.size() - 1)[1] = i + 1;
            }
        }
        return stretches.stream().filter(stretch -> stretch[1] - stretch[0] >= 3)
                .max((a, b) -> Double.compare(length(a), length(b)));
    }

    private void open(List<int[]> stretches, int at) {
        boolean joins = !stretches.isEmpty() && series.seconds(at) - series.seconds(stretches.get(stretches.size() - 1)[1] - 1) < SHORT_PAUSE;
        if (!joins) {
            stretches.add(new int[] {at, at + 1});
        }
    }

    private double length(int[] stretch) {
        return series.seconds(stretch[1] - 1) - series.seconds(stretch[0]);
    }

    /**
     * The start lies between the last row at rest and the first in work. Power is a mean over its interval, so the share of the full power
     * in the first row says how much of that interval was work; the same holds for the end.
     */
    private Work refined(int from, int to, Channel channel) {
        double sampling = series.samplingSeconds();
        double start = series.seconds(from) - sampling;
        if (from > 0 && series.seconds(from) - series.seconds(from - 1) < 2.5 * series.stepSeconds()) {
            double share = shareOfWork(from, from - 1, from + 1);
            start = series.seconds(from) - sampling * share;
            if (share > 0.98) {
                start = (start + Math.min(start, series.seconds(from - 1))) / 2; // a row is missing here: the work began somewhere in between
            }
        } else if (from > 0) {
            start = (start + Math.min(start, series.seconds(from - 1))) / 2; // likewise where many are missing
        }
        double end = series.seconds(to - 1);
        if (to < series.size() && series.seconds(to) - series.seconds(to - 1) < 2.5 * series.stepSeconds()) {
            int rest = Math.min(series.size() - 1, to + 1);
            double share = rest > to ? shareOfWork(to, rest, to - 1) : 0;
            end += (series.seconds(to) - series.seconds(to - 1)) * share;
        } else if (to < series.size()) {
            end = (end + Math.max(end, series.seconds(to) - sampling)) / 2;
        }
        return new Work(from, to, start, end, channel);
    }

    private double shareOfWork(int mixed, int rest, int work) {
        for (Channel power : new Channel[] {Channel.PACKAGE_POWER, Channel.SYSTEM_POWER}) {
            if (work < series.size() && work >= 0) {
                double low = series.value(power, rest);
                double high = series.value(power, work);
                double share = (series.value(power, mixed) - low) / (high - low);
                if (high > 1.5 * low && share > -0.5) {
                    return Math.max(0, Math.min(1, share));
                }
            }
        }
        return mixed < work ? 1 : 0;
    }

    /** Lowest median of three neighbours: a single odd row does not count. */
    private double lowest(Channel channel) {
        double lowest = Double.POSITIVE_INFINITY;
        double[] last = {Double.NaN, Double.NaN};
        for (int i = 0; i < series.size(); i++) {
            double value = series.value(channel, i);
            if (!Double.isNaN(value)) {
                if (!Double.isNaN(last[0])) {
                    double median = Math.max(Math.min(last[0], last[1]), Math.min(Math.max(last[0], last[1]), value));
                    lowest = Math.min(lowest, median);
                }
                last[0] = last[1];
                last[1] = value;
            }
        }
        return lowest;
    }

    private double high(Channel channel) {
        double[] values = new double[series.size()];
        int count = 0;
        for (int i = 0; i < series.size(); i++) {
            if (!Double.isNaN(series.value(channel, i))) {
                values[count++] = series.value(channel, i);
            }
        }
        double[] sorted = Arrays.copyOf(values, count);
        Arrays.sort(sorted);
        return count == 0 ? Double.NaN : sorted[(int) (0.9 * (count - 1))];
    }
}
