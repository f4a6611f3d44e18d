package coldproof.trace;

import coldproof.trace.ChannelMap.MappedColumn;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Takes the rows of a log of any length in constant memory. Up to {@value #ENTRIES} rows are kept as they are; of a longer log the means
 * of 2, 4, 8… neighbouring rows. Numbers no such sensor can show are taken for missing and told of. Not thread-safe.
 */
public final class TraceAccumulator implements RowSink {
    private static final int ENTRIES = 1 << 16;
    private static final int FIRST_ROOM = 1 << 11; // a usual trial
    private static final double HALF_DAY = 43_200; // s
    private static final double DAY = 86_400; // s
    private static final double HOUR = 3_600; // s, by which clocks are set back at the end of summer time (common practice)
    private static final double LONGEST_STEP = 60; // s between rows across that hour; a longer one is no sign of it

    private final ChannelMap map;
    private final int width;
    private double[] seconds = new double[FIRST_ROOM];
    private long[] lines = new long[FIRST_ROOM];
    private int[] rowsIn = new int[FIRST_ROOM];
    private final double[][] sums;
    private final int[][] counts;
    private final List<TraceRemark> remarks = new ArrayList<>();
    private final Tally[] tallies;
    private final double[] factors; // by column, out of the records: this is the hot loop of a long log
    private final double[] offsets;
    private final double[] lowest;
    private final double[] highest;
    private final double[] openSums; // of the entry that rows are being added to
    private final int[] openCounts;
    private int entries;
    private long rowsEach = 1;
    private long rows;
    private long lastLine;
    private double firstTime = Double.NaN;
    private double lastTime = Double.NEGATIVE_INFINITY;
    private double shift; // days and hours that the log's clock fell behind
    private final Tally backwards = new Tally("is not later than the row before: left out");
    private final Tally leftOut = new Tally("");

    /** Prepares for the rows of a log. */
    public TraceAccumulator(ChannelMap map) {
        this.map = map;
        width = map.columns().size();
        sums = new double[width][FIRST_ROOM];
        counts = new int[width][FIRST_ROOM];
        tallies = new Tally[2 * width];
        factors = new double[width];
        offsets = new double[width];
        lowest = new double[width];
        highest = new double[width];
        openSums = new double[width];
        openCounts = new int[width];
        for (int i = 0; i < width; i++) {
            MappedColumn column = map.columns().get(i);
            Plausible plausible = Plausible.of(column.channel());
            factors[i] = column.unit().factor();
            offsets[i] = column.unit().offset();
            lowest[i] = plausible.low();
            highest[i] = plausible.high();
            tallies[i] = new Tally("of \"" + column.name() + "\" is outside " + plausible.text() + ": taken for missing");
            tallies[width + i] = new Tally("of \"" + column.name() + "\" is no number: taken for missing");
        }
    }

    @Override
    public void row(long line, double[] values) {
        double time = map.time().unit().toInside(values[0]) + shift;
        if (time < lastTime - HALF_DAY && map.time().kind() == ColumnSample.CellKind.TIME_OF_DAY) {
            shift += DAY;
            time += DAY;
        }
        if (time <= lastTime && isSetBack(time)) {
            shift += HOUR;
            time += HOUR;
            remarks.add(new TraceRemark(line, "the clock was set back by an hour before this line: taken for the end of summer time"));
        }
        rows++;
        lastLine = line;
        if (!(time > lastTime)) {
            backwards.count(line, "the time");
            return;
        }
        if (Double.isNaN(firstTime)) {
            firstTime = time;
        }
        lastTime = time;
        if (entries == 0 || rowsIn[entries - 1] == rowsEach) {
            openEntry(line);
        }
        int at = entries - 1;
        seconds[at] += (time - firstTime - seconds[at]) / ++rowsIn[at];
        for (int i = 0; i < width; i++) {
            double value = values[i + 1] * factors[i] + offsets[i];
            if (value >= lowest[i] && value <= highest[i]) {
                openSums[i] += value;
                openCounts[i]++;
            } else if (!Double.isNaN(value)) {
                tallies[i].count(line, values[i + 1]);
            }
        }
    }

    private boolean isSetBack(double time) {
        return map.time().kind() != ColumnSample.CellKind.NUMBER && time + HOUR > lastTime && time + HOUR <= lastTime + LONGEST_STEP;
    }

    private void openEntry(long line) {
        keepOpen();
        if (entries == ENTRIES) {
            halve();
        } else if (entries == seconds.length) {
            makeRoom(2 * entries);
        }
        lines[entries] = line;
        seconds[entries] = 0;
        rowsIn[entries] = 0;
        Arrays.fill(openSums, 0);
        Arrays.fill(openCounts, 0);
        entries++;
    }

    /** Writes down what the last entry has come to so far. */
    private void keepOpen() {
        for (int i = 0; i < width && entries > 0; i++) {
            sums[i][entries - 1] = openSums[i];
            counts[i][entries - 1] = openCounts[i];
        }
    }

    private void makeRoom(int room) {
        seconds = Arrays.copyOf(seconds, room);
        lines = Arrays.copyOf(lines, room);
        rowsIn = Arrays.copyOf(rowsIn, room);
        for (int i = 0; i < width; i++) {
            sums[i] = Arrays.copyOf(sums[i], room);
            counts[i] = Arrays.copyOf(counts[i], room);
        }
    }

    /** Joins each two neighbouring entries, so that as many again find room. */
    private void halve() {
        for (int j = 0; j < ENTRIES / 2; j++) {
            int a = 2 * j;
            int b = a + 1;
            int both = rowsIn[a] + rowsIn[b];
            seconds[j] = (seconds[a] * rowsIn[a] + seconds[b] * rowsIn[b]) / both;
            lines[j] = lines[a];
            rowsIn[j] = both;
            for (int i = 0; i < width; i++) {
                sums[i][j] = sums[i][a] + sums[i][b];
                counts[i][j] = counts[i][a] + counts[i][b];
            }
        }
        entries = ENTRIES / 2;
        rowsEach *= 2;
    }

    @Override
    public void unreadable(long line, int column, String cell) {
        if (column > 0) {
            tallies[width + column - 1].count(line, "\"" + cell + "\"");
        }
    }

    @Override
    public void skipped(long line, String why) {
        lastLine = line;
        leftOut.count(line, "this line " + why);
    }

    /** What was taken so far. */
    public Series series() {
        keepOpen();
        double[][] columns = new double[width][entries];
        for (int i = 0; i < width; i++) {
            for (int j = 0; j < entries; j++) {
                columns[i][j] = counts[i][j] == 0 ? Double.NaN : sums[i][j] / counts[i][j];
            }
        }
        List<TraceRemark> all = new ArrayList<>(remarks);
        leftOut.addTo(all);
        backwards.addTo(all);
        for (Tally tally : tallies) {
            tally.addTo(all);
        }
        if (rowsEach > 1) {
            all.add(new TraceRemark(0, "a long log: kept as means of " + rowsEach + " rows each, up to line " + lastLine));
        }
        return new Series(map, Arrays.copyOf(seconds, entries), Arrays.copyOf(lines, entries), columns, all, rows, rowsEach);
    }

    /** Counts mistakes of one kind and keeps the first. */
    private static final class Tally {
        private final String text;
        private long firstLine;
        private String first = "";
        private long count;

        Tally(String text) {
            this.text = text;
        }

        void count(long line, String what) {
            if (count++ == 0) {
                firstLine = line;
                first = what;
            }
        }

        void count(long line, double number) {
            if (count == 0) {
                count(line, number == Math.rint(number) && Math.abs(number) < 1e15 ? Long.toString((long) number) : Double.toString(number));
            } else {
                count++;
            }
        }

        void addTo(List<TraceRemark> all) {
            if (count > 0) {
                String more = count == 1 ? "" : " (and " + (count - 1) + " more like it)";
                all.add(new TraceRemark(firstLine, (first + " " + text).strip() + more));
            }
        }
    }
}
