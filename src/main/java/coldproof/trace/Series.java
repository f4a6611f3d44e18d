package coldproof.trace;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * A log in memory: times and, for each channel, one number a row in the unit used inside; NaN where missing. Of several die sensors the one
 * that is hottest in the mean is kept, of several clocks, fans and shares the mean. A very long log is kept as means of neighbouring rows.
 */
public final class Series {
    private final double[] seconds;
    private final long[] lines;
    private final Map<Channel, double[]> channels = new EnumMap<>(Channel.class);
    private final ChannelMap map;
    private final List<TraceRemark> remarks;
    private final long rows;
    private final long rowsEach;
    private final int gaps;
    private final double samplingSeconds;

    /**
     * Makes a series.
     *
     * @param map which column was which channel
     * @param seconds times, rising strictly; the first need not be 0
     * @param lines line in the file of each row
     * @param columns numbers in the units used inside, an array for each column of the map but the time, in its order
     * @param remarks what was noticed while reading
     * @param rows rows read
     * @param rowsEach how many rows each entry stands for, 1 or more
     */
    Series(ChannelMap map, double[] seconds, long[] lines, double[][] columns, List<TraceRemark> remarks, long rows, long rowsEach) {
        this.map = map;
        this.seconds = seconds;
        this.lines = lines;
        this.rows = rows;
        this.rowsEach = rowsEach;
        double[] steps = steps(seconds);
        samplingSeconds = steps.length == 0 ? Double.NaN : median(steps) / rowsEach;
        List<TraceRemark> all = new ArrayList<>(remarks);
        for (int i = 0; i < columns.length; i++) {
            Channel channel = map.columns().get(i).channel();
            LoneReadings.clear(channel, columns[i], stepSeconds()).ifPresent(lone -> all.add(new TraceRemark(lines[lone.first()], lone.text(channel))));
        }
        for (Channel channel : Channel.values()) {
            List<double[]> same = columnsOf(channel, columns);
            if (!same.isEmpty()) {
                channels.put(channel, channel == Channel.DIE_TEMPERATURE ? hottest(same) : mean(same));
            }
        }
        gaps = findGaps(all);
        remarks(all);
        all.sort((a, b) -> Long.compare(a.line(), b.line()));
        this.remarks = List.copyOf(all);
    }

    private List<double[]> columnsOf(Channel channel, double[][] columns) {
        List<double[]> same = new ArrayList<>();
        for (int i = 0; i < columns.length; i++) {
            if (map.columns().get(i).channel() == channel) {
                same.add(columns[i]);
            }
        }
        return same;
    }

    /** Tells of sensors that stand still; one that never changes though work must move it measures nothing and is not used. */
    private void remarks(List<TraceRemark> all) {
        for (Channel channel : Channel.values()) {
            if (channels.containsKey(channel)) {
                Optional<StuckSensor> stuck = StuckSensor.find(channel, channels.get(channel), seconds);
                stuck.ifPresent(found -> all.add(new TraceRemark(lines[found.from()], found.text())));
                if (stuck.isPresent() && stuck.get().always()) {
                    channels.remove(channel);
                }
            }
        }
    }

    /** Whether times are told in whole seconds: a row every 1.2 s then shows a step of 2 s now and then though none is missing. */
    private boolean hasWholeSeconds() {
        return Arrays.stream(seconds).allMatch(time -> Math.abs(time - seconds[0] - Math.rint(time - seconds[0])) < 1e-6);
    }

    private int findGaps(List<TraceRemark> all) {
        int count = 0;
        double usual = samplingSeconds * rowsEach;
        double longest = (rowsEach > 1 || hasWholeSeconds() ? 2.5 : 1.5) * usual;
        for (int i = 1; i < seconds.length; i++) {
            double step = seconds[i] - seconds[i - 1];
            if (step > longest) {
                count++;
                if (count <= 5) {
                    all.add(new TraceRemark(lines[i], String.format(Locale.ROOT, "no rows for %.1f s before this line", step)));
                }
            }
        }
        return count;
    }

    /** Which column was which channel. */
    public ChannelMap map() {
        return map;
    }

    /** Number of entries. */
    public int size() {
        return seconds.length;
    }

    /** Rows read from the log. */
    public long rows() {
        return rows;
    }

    /** Time of an entry in s. */
    public double seconds(int index) {
        return seconds[index];
    }

    /** Line in the file of an entry, first is 1. */
    public long line(int index) {
        return lines[index];
    }

    /** Usual time between two rows of the log in s; NaN when there are fewer than two. */
    public double samplingSeconds() {
        return samplingSeconds;
    }

    /** Usual time between two entries in s: the sampling, or a multiple of it for a very long log. */
    public double stepSeconds() {
        return samplingSeconds * rowsEach;
    }

    /** How often the time between two rows was more than one and a half times the usual; two and a half times where times are whole seconds or rows were put together. */
    public int gaps() {
        return gaps;
    }

    /** What was noticed, by line. */
    public List<TraceRemark> remarks() {
        return remarks;
    }

    /** Whether the channel was measured. */
    public boolean has(Channel channel) {
        return channels.containsKey(channel);
    }

    /** One number of a channel; NaN where missing. */
    public double value(Channel channel, int index) {
        double[] values = channels.get(channel);
        return values == null ? Double.NaN : values[index];
    }

    /** Mean of the numbers of a channel in [from, to); NaN when there are none. */
    public double mean(Channel channel, int from, int to) {
        double[] values = channels.get(channel);
        double sum = 0;
        int count = 0;
        for (int i = from; values != null && i < to; i++) {
            if (!Double.isNaN(values[i])) {
                sum += values[i];
                count++;
            }
        }
        return count == 0 ? Double.NaN : sum / count;
    }

    private static double[] hottest(List<double[]> sensors) {
        double[] best = sensors.get(0);
        double bestMean = Double.NEGATIVE_INFINITY;
        for (double[] sensor : sensors) {
            double mean = Arrays.stream(sensor).filter(value -> !Double.isNaN(value)).average().orElse(Double.NEGATIVE_INFINITY);
            if (mean > bestMean) {
                best = sensor;
                bestMean = mean;
            }
        }
        return best;
    }

    private static double[] mean(List<double[]> columns) {
        if (columns.size() == 1) {
            return columns.get(0);
        }
        double[] mean = new double[columns.get(0).length];
        for (int i = 0; i < mean.length; i++) {
            double sum = 0;
            int count = 0;
            for (double[] column : columns) {
                if (!Double.isNaN(column[i])) {
                    sum += column[i];
                    count++;
                }
            }
            mean[i] = count == 0 ? Double.NaN : sum / count;
        }
        return mean;
    }

    private static double[] steps(double[] seconds) {
        double[] steps = new double[Math.max(0, seconds.length - 1)];
        for (int i = 0; i < steps.length; i++) {
            steps[i] = seconds[i + 1] - seconds[i];
        }
        return steps;
    }

    private static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }
}
