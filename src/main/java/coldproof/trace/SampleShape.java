package coldproof.trace;

import java.util.List;

/** How the columns of a sample behave when the work begins: what jumps at once, what follows slowly, what does not care. */
final class SampleShape {
    private static final int AROUND = 8; // rows looked at before and after a candidate start
    private final int start;
    private final int rows;

    /**
     * Finds the row at which most columns jump.
     *
     * @param columns columns of numbers, all of one length
     */
    SampleShape(List<ColumnSample> columns) {
        rows = columns.isEmpty() ? 0 : columns.get(0).values().length;
        double[] jumps = new double[rows];
        for (ColumnSample column : columns) {
            addJumps(column.values(), jumps);
        }
        int best = -1;
        for (int i = 0; i < rows; i++) {
            if (best < 0 || jumps[i] > jumps[best]) {
                best = i;
            }
        }
        start = best >= 0 && jumps[best] >= 10 ? best : -1;
    }

    /** Adds to each row how many times the scatter of its neighbourhood the column rises there, at most 20. */
    private static void addJumps(double[] values, double[] jumps) {
        for (int i = 2; i + 2 < values.length; i++) {
            double[] before = moments(values, Math.max(0, i - AROUND), i);
            double[] after = moments(values, i, Math.min(values.length, i + AROUND));
            double scatter = Math.sqrt(before[1] + after[1]) + 1e-3 * (Math.abs(before[0]) + Math.abs(after[0])) + 1e-9;
            double rise = (after[0] - before[0]) / scatter;
            if (rise > 0) {
                jumps[i] += Math.min(20, rise);
            }
        }
    }

    /** Whether a start was seen. */
    boolean hasStart() {
        return start >= 0;
    }

    /** Mean before the start, or of all rows when none was seen. */
    double before(ColumnSample column) {
        return hasStart() ? moments(column.values(), 0, start)[0] : mean(column);
    }

    /** Highest mean of eight rows in the work. */
    double top(ColumnSample column) {
        double[] values = column.values();
        double top = Double.NaN;
        for (int i = Math.max(0, start); i < rows; i += AROUND) {
            double mean = moments(values, i, Math.min(rows, i + AROUND))[0];
            top = Double.isNaN(top) || mean > top ? mean : top;
        }
        return top;
    }

    /** Rise from before the start to the highest mean in the work. */
    double rise(ColumnSample column) {
        return top(column) - before(column);
    }

    /** Rise within the first rows of the work. */
    double quickRise(ColumnSample column) {
        return hasStart() ? moments(column.values(), Math.min(rows - 1, start + 2), Math.min(rows, start + AROUND + 2))[0] - before(column) : 0;
    }

    /** Mean in the work, or of all rows when no start was seen. */
    double work(ColumnSample column) {
        return hasStart() ? moments(column.values(), start, rows)[0] : mean(column);
    }

    private double mean(ColumnSample column) {
        return moments(column.values(), 0, rows)[0];
    }

    private static double[] moments(double[] values, int from, int to) {
        double sum = 0;
        double squares = 0;
        int count = 0;
        for (int i = from; i < to; i++) {
            if (!Double.isNaN(values[i])) {
                sum += values[i];
                squares += values[i] * values[i];
                count++;
            }
        }
        double mean = sum / count;
        return new double[] {mean, count < 2 ? 0 : Math.max(0, squares / count - mean * mean)};
    }
}
