package coldproof.files.table;

import coldproof.trace.ColumnSample;
import coldproof.trace.ColumnSample.CellKind;
import coldproof.trace.TraceUnit;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/**
 * Finds the numbers in lines of a log. Plain decimals are read in place: up to 15 digits make an exact mantissa, divided by an exact power of
 * ten, which is the correctly rounded number; anything else goes the long way. A cell never goes on in the next line, so that a stray quote
 * costs one cell and not the file. Not thread-safe.
 */
final class LogScanner {
    private static final int SKIP = -1;
    private static final int NEVER = -1;
    private static final char NO_UTF8 = '\ufffd'; // what stands for bytes that are no UTF-8: those of a degree sign in Latin-1
    private static final long NEW_LINES = EightBytes.all((byte) '\n');
    private static final long RETURNS = EightBytes.all((byte) '\r');

    private final LogHead head;
    private final LogRows rows;
    private final TimeText time = new TimeText();
    private final byte delimiter;
    private final byte decimalMark;
    private final long delimiters;
    private final int[] slots;
    private final boolean[] stamps;
    private final TraceUnit[] units;
    private final int[] wanted;
    private final int lastWanted;
    private int line;

    /**
     * Prepares to read.
     *
     * @param wanted which columns of the file to read, first is 0; the first of them is the time
     * @param rows takes what is found
     */
    LogScanner(LogHead head, int[] wanted, LogRows rows) {
        this.head = head;
        this.rows = rows;
        this.wanted = wanted.clone();
        delimiter = (byte) head.delimiter();
        delimiters = EightBytes.all(delimiter);
        decimalMark = (byte) (head.decimalComma() ? ',' : '.');
        int width = head.columns().size();
        slots = new int[width];
        stamps = new boolean[width];
        units = new TraceUnit[width];
        Arrays.fill(slots, SKIP);
        int last = 0;
        for (int i = 0; i < wanted.length; i++) {
            ColumnSample column = head.columns().get(wanted[i]);
            slots[wanted[i]] = i;
            stamps[wanted[i]] = column.kind() == CellKind.DATE_TIME || column.kind() == CellKind.TIME_OF_DAY;
            units[wanted[i]] = TraceUnit.named(column.unit()).orElse(null);
            last = Math.max(last, wanted[i]);
        }
        lastWanted = last;
    }

    /** Reads the lines of a block. */
    void scan(LogBlock block) {
        rows.clear();
        line = 0;
        for (int at = block.from; at < block.to; line++) {
            at = LogBlock.behindLineEnd(block.bytes, row(block.bytes, at, block.unfinished ? block.to : NEVER));
        }
        rows.lineCount(line);
    }

    /**
     * Reads one line; returns where it ends.
     *
     * @param unfinishedTo place behind the line that has no line end in the log
     */
    private int row(byte[] bytes, int start, int unfinishedTo) {
        if (isRemark(bytes, start)) {
            return endOfLine(bytes, start);
        }
        int remarks = rows.remarks();
        int row = rows.newRow();
        double[] values = rows.values();
        int p = start;
        boolean whole = true;
        for (int column = 0; column <= lastWanted; column++) {
            int slot = slots[column];
            if (slot == SKIP) {
                p = skip(bytes, p);
            } else if (stamps[column]) {
                p = stamp(bytes, p, values, row, slot);
            } else {
                p = number(bytes, p, values, row, slot, column);
            }
            if (bytes[p] != delimiter) {
                whole = column == lastWanted;
                break;
            }
            p++;
        }
        int end = endOfLine(bytes, p);
        boolean timed = !Double.isNaN(values[row]);
        if (!timed) {
            rows.forgetRemarks(remarks); // a line without a time is told of as a whole
        }
        if (!whole && timed && end + 1 == unfinishedTo) {
            rows.forgetRemarks(remarks);
            rows.skipped(line, "is cut off: its last number may not be whole");
        } else if (timed && anyReadable(values, row)) {
            rows.addRow(line);
        } else if (!isBlank(bytes, start, end)) {
            explain(bytes, start, end, timed);
        }
        return end;
    }

    private boolean anyReadable(double[] values, int row) {
        for (int i = row + 1; i < row + wanted.length; i++) {
            if (!Double.isNaN(values[i])) {
                return true;
            }
        }
        return false;
    }

    private void explain(byte[] bytes, int start, int end, boolean timed) {
        String text = new String(bytes, start, end - start, StandardCharsets.UTF_8);
        DelimitedLine cells = DelimitedLine.split(text, head.delimiter(), 1).get(0);
        String timeName = head.columns().get(wanted[0]).name();
        boolean heading = cells.cells().size() > wanted[0] && cells.cells().get(wanted[0]).text().strip().equals(timeName);
        rows.skipped(line, heading ? "repeats the heading" : timed ? "has a time and nothing else" : "has no readable time");
    }

    private static boolean isRemark(byte[] bytes, int from) {
        int p = from;
        while (bytes[p] == ' ') {
            p++;
        }
        return bytes[p] == '#';
    }

    private boolean isBlank(byte[] bytes, int start, int end) {
        for (int i = start; i < end; i++) {
            if (bytes[i] != ' ' && bytes[i] != '\t' && bytes[i] != '"' && bytes[i] != delimiter) {
                return false;
            }
        }
        return true;
    }

    /** End of the cell that begins here. */
    private int skip(byte[] bytes, int from) {
        return bytes[from] == '"' ? endOfQuoted(bytes, from) : find(bytes, from, delimiters);
    }

    private static int endOfLine(byte[] bytes, int from) {
        return bytes[from] == '\n' ? from : find(bytes, from, NEW_LINES);
    }

    /** Place of the next line end, or of the byte of a pattern where that comes first. */
    private static int find(byte[] bytes, int from, long pattern) {
        int p = from;
        while (true) {
            long word = EightBytes.at(bytes, p);
            long found = EightBytes.equal(word, pattern) | EightBytes.equal(word, NEW_LINES) | EightBytes.equal(word, RETURNS);
            if (found != 0) {
                return p + EightBytes.first(found);
            }
            p += 8;
        }
    }

    private boolean endsCell(byte c) {
        return c == delimiter || c == '\n' || c == '\r';
    }

    /** Reads a cell of a column of numbers; one of at most eight characters, as most have, in one step. */
    private int number(byte[] bytes, int from, double[] values, int row, int slot, int column) {
        int p = from;
        boolean quoted = bytes[p] == '"';
        p += quoted ? 1 : 0;
        boolean negative = bytes[p] == '-';
        p += negative ? 1 : 0;
        long word = EightBytes.at(bytes, p);
        long others = EightBytes.noDigits(word);
        int length = EightBytes.first(others);
        int digits = length;
        int decimals = 0;
        if (length < 8 && bytes[p + length] == decimalMark) {
            word = EightBytes.without(word, length);
            length = EightBytes.first(others & others - 1);
            digits = length - 1;
            decimals = digits - EightBytes.first(others);
        }
        int end = p + length;
        if (quoted && bytes[end] == '"') {
            quoted = false;
            end++;
        }
        if (digits > 0 && !quoted && endsCell(bytes[end])) {
            double number = EightBytes.number(word, digits) / Decimals.powerOfTen(decimals);
            values[row + slot] = negative ? -number : number;
            return end;
        }
        return length == 8 ? longNumber(bytes, from, values, row, slot, column) : otherNumber(bytes, from, values, row, slot, column);
    }

    /** Reads a plain decimal of any length, digit by digit. */
    private int longNumber(byte[] bytes, int from, double[] values, int row, int slot, int column) {
        int p = from;
        boolean quoted = bytes[p] == '"';
        p += quoted ? 1 : 0;
        boolean negative = bytes[p] == '-';
        p += negative ? 1 : 0;
        long mantissa = 0;
        int digits = 0;
        int mark = -1;
        for (byte c = bytes[p]; c >= '0' && c <= '9' || c == decimalMark && mark < 0; c = bytes[++p]) {
            if (c == decimalMark) {
                mark = p;
            } else {
                mantissa = mantissa * 10 + (c - '0');
                digits++;
            }
        }
        int decimals = mark < 0 ? 0 : p - mark - 1;
        if (quoted && bytes[p] == '"') {
            quoted = false;
            p++;
        }
        if (digits > 0 && digits <= Decimals.EXACT_DIGITS && !quoted && endsCell(bytes[p])) {
            double number = mantissa / Decimals.powerOfTen(decimals);
            values[row + slot] = negative ? -number : number;
            return p;
        }
        return otherNumber(bytes, from, values, row, slot, column);
    }

    private int otherNumber(byte[] bytes, int from, double[] values, int row, int slot, int column) {
        int end = skip(bytes, from);
        String cell = text(bytes, from, end);
        if (Table.isMissing(cell)) {
            return end;
        }
        double number = CellNumber.of(cell, head.decimalComma(), units[column]);
        if (Double.isNaN(number)) {
            rows.unreadable(line, slot, cell);
        } else {
            values[row + slot] = number;
        }
        return end;
    }

    private int stamp(byte[] bytes, int from, double[] values, int row, int slot) {
        int end = skip(bytes, from);
        values[row + slot] = time.seconds(bytes, from, end);
        if (Double.isNaN(values[row + slot])) {
            rows.unreadable(line, slot, text(bytes, from, end));
        }
        return end;
    }

    private static String text(byte[] bytes, int from, int end) {
        boolean quoted = end - from >= 2 && bytes[from] == '"' && bytes[end - 1] == '"';
        int start = quoted ? from + 1 : from;
        int length = quoted ? end - from - 2 : end - from;
        String text = new String(bytes, start, length, StandardCharsets.UTF_8);
        return (text.indexOf(NO_UTF8) < 0 ? text : new String(bytes, start, length, StandardCharsets.ISO_8859_1)).strip();
    }

    private int endOfQuoted(byte[] bytes, int from) {
        int p = from + 1;
        while (bytes[p] != '\n' && bytes[p] != '\r') {
            boolean ends = bytes[p] == '"' && (bytes[p + 1] == delimiter || bytes[p + 1] == '\n' || bytes[p + 1] == '\r');
            p++;
            if (ends) {
                return p;
            }
        }
        return p;
    }
}
