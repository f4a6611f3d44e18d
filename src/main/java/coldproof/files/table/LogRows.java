package coldproof.files.table;

import coldproof.trace.RowSink;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** What a stretch of lines holds, kept to be told in its turn. Lines are counted from the first of the stretch, which is 0. */
final class LogRows {
    private static final int WHOLE_LINE = -1;

    /**
     * A cell that is no number, or a line that was left out.
     *
     * @param beforeRow how many rows are told before it
     * @param column which of the columns asked for, or {@link #WHOLE_LINE}
     */
    private record Remark(int beforeRow, int line, int column, String text) {}

    private final int width;
    private final double[] told;
    private final List<Remark> remarks = new ArrayList<>();
    private double[] values;
    private int[] lines = new int[1 << 10];
    private int rows;
    private int lineCount;

    LogRows(int width) {
        this.width = width;
        told = new double[width];
        values = new double[lines.length * width];
    }

    void clear() {
        rows = 0;
        lineCount = 0;
        remarks.clear();
    }

    /** Numbers of all rows, one row behind the other; to be asked for again after {@link #newRow}. */
    double[] values() {
        return values;
    }

    /** Begins a row, forgetting one that was not added; returns where its numbers stand, all NaN. */
    int newRow() {
        if (rows == lines.length) {
            lines = Arrays.copyOf(lines, 2 * rows);
            values = Arrays.copyOf(values, 2 * rows * width);
        }
        int from = rows * width;
        Arrays.fill(values, from, from + width, Double.NaN);
        return from;
    }

    /** Keeps the row begun last. */
    void addRow(int line) {
        lines[rows++] = line;
    }

    /** How many remarks there are. */
    int remarks() {
        return remarks.size();
    }

    /** Forgets all remarks but so many. */
    void forgetRemarks(int kept) {
        remarks.subList(kept, remarks.size()).clear();
    }

    void unreadable(int line, int column, String cell) {
        remarks.add(new Remark(rows, line, column, cell));
    }

    void skipped(int line, String why) {
        remarks.add(new Remark(rows, line, WHOLE_LINE, why));
    }

    void lineCount(int count) {
        lineCount = count;
    }

    int lineCount() {
        return lineCount;
    }

    /** Tells everything in the order of the file. */
    void tell(long firstLine, RowSink sink) {
        int row = 0;
        for (Remark remark : remarks) {
            tellRows(row, remark.beforeRow(), firstLine, sink);
            row = remark.beforeRow();
            if (remark.column() == WHOLE_LINE) {
                sink.skipped(firstLine + remark.line(), remark.text());
            } else {
                sink.unreadable(firstLine + remark.line(), remark.column(), remark.text());
            }
        }
        tellRows(row, rows, firstLine, sink);
    }

    private void tellRows(int from, int to, long firstLine, RowSink sink) {
        for (int row = from; row < to; row++) {
            System.arraycopy(values, row * width, told, 0, width);
            sink.row(firstLine + lines[row], told);
        }
    }
}
