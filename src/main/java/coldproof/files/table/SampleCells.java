package coldproof.files.table;

import java.util.Arrays;

/**
 * The cells of the first rows of a log, blanks at their ends left out, as places in one text: a sample holds a hundred thousand of them, and
 * an object each would cost more than all else that is done with it.
 */
final class SampleCells {
    private final String text;
    private int[] from = new int[1 << 10];
    private int[] to = new int[1 << 10];
    private int[] firstCell = new int[1 << 8]; // by row
    private int cells;
    private int rows;

    private SampleCells(String text) {
        this.text = text;
    }

    /** The cells of all rows of data: lines that are neither blank nor remarks. */
    static SampleCells of(String sample, Layout layout) {
        return sample.indexOf('"') < 0 ? unquoted(sample, layout) : quoted(sample, layout);
    }

    private static SampleCells quoted(String sample, Layout layout) {
        StringBuilder all = new StringBuilder(sample.length());
        var lines = DelimitedLine.split(sample, layout.delimiter(), Integer.MAX_VALUE).stream()
                .filter(line -> line.line() >= layout.firstDataLine() && !line.isBlank() && !line.isRemark()).toList();
        lines.forEach(line -> line.cells().forEach(cell -> all.append(cell.text())));
        SampleCells cells = new SampleCells(all.toString());
        int at = 0;
        for (DelimitedLine line : lines) {
            for (DelimitedLine.Cell cell : line.cells()) {
                cells.addCell(at, at + cell.text().length());
                at += cell.text().length();
            }
            cells.endRow();
        }
        return cells;
    }

    /** Without quotes, each delimiter ends a cell and each line end a row. */
    private static SampleCells unquoted(String sample, Layout layout) {
        SampleCells cells = new SampleCells(sample);
        int line = 1;
        int at = 0;
        while (at < sample.length()) {
            int start = at;
            int cell = at;
            boolean kept = line++ >= layout.firstDataLine();
            char c = '\0';
            for (; at < sample.length() && (c = sample.charAt(at)) != '\n' && c != '\r'; at++) {
                if (c == layout.delimiter() && c != '\0' && kept) {
                    cells.addCell(cell, at);
                    cell = at + 1;
                }
            }
            if (kept) {
                cells.addCell(cell, at);
                cells.endOrForgetRow(start, at);
            }
            at += c == '\r' && at + 1 < sample.length() && sample.charAt(at + 1) == '\n' ? 2 : 1;
        }
        return cells;
    }

    private void addCell(int start, int end) {
        if (cells == from.length) {
            from = Arrays.copyOf(from, 2 * cells);
            to = Arrays.copyOf(to, 2 * cells);
        }
        int first = start;
        int last = end;
        while (first < last && Character.isWhitespace(text.charAt(first))) {
            first++;
        }
        while (last > first && Character.isWhitespace(text.charAt(last - 1))) {
            last--;
        }
        from[cells] = first;
        to[cells++] = last;
    }

    private void endRow() {
        if (++rows == firstCell.length) {
            firstCell = Arrays.copyOf(firstCell, 2 * rows);
        }
        firstCell[rows] = cells;
    }

    private void endOrForgetRow(int start, int end) {
        boolean blank = true;
        for (int cell = firstCell[rows]; cell < cells; cell++) {
            blank &= from[cell] == to[cell];
        }
        int first = start;
        while (first < end && Character.isWhitespace(text.charAt(first))) {
            first++;
        }
        boolean remark = first < end && text.charAt(first) == '#';
        if (blank || remark) {
            cells = firstCell[rows];
        } else {
            endRow();
        }
    }

    /** Number of rows. */
    int rows() {
        return rows;
    }

    /** Whether a row has a cell in a column. */
    boolean has(int row, int column) {
        return firstCell[row] + column < firstCell[row + 1];
    }

    /** What a cell holds; nothing where the row has none. */
    String text(int row, int column) {
        return has(row, column) ? text.substring(from[firstCell[row] + column], to[firstCell[row] + column]) : "";
    }

    /** Its number when it is plain digits, see {@link CellNumber#plainDigits}. */
    double plainDigits(int row, int column, boolean decimalComma) {
        int cell = firstCell[row] + column;
        return has(row, column) ? CellNumber.plainDigits(text, from[cell], to[cell], decimalComma) : Double.NaN;
    }

    /** Number of cells that are numbers with such a decimal mark. */
    int numbersWith(char mark) {
        int count = 0;
        for (int cell = 0; cell < cells; cell++) {
            count += DecimalMarks.isNumberWith(mark, text, from[cell], to[cell]) ? 1 : 0;
        }
        return count;
    }

    /** Number of cells that are numbers with a comma and three digits behind it, which may be thousands. */
    int mayBeThousands() {
        int count = 0;
        for (int cell = 0; cell < cells; cell++) {
            count += to[cell] - text.indexOf(',', from[cell]) == 4 && DecimalMarks.isNumberWith(',', text, from[cell], to[cell]) ? 1 : 0;
        }
        return count;
    }
}
