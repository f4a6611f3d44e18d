package coldproof.files.table;

import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import coldproof.trace.ColumnSample;
import coldproof.trace.ColumnSample.CellKind;
import coldproof.trace.RowSink;
import coldproof.trace.TraceUnit;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.LongConsumer;

/**
 * Reads the rows of a log from bytes in constant memory. Plain decimals are read in place: up to 15 digits make an exact mantissa, divided
 * by an exact power of ten, which is the correctly rounded number; anything else goes the long way. A cell never goes on in the next line,
 * so that a stray quote costs one cell and not the file.
 */
final class LogScanner {
    private static final int BUFFER = 1 << 18;
    private static final int LONGEST_LINE = 1 << 24;
    private static final int SKIP = -1;

    private record Unreadable(int slot, String text) {}

    private final InputStream in;
    private final LogHead head;
    private final RowSink sink;
    private final LongConsumer bytesRead;
    private final TimeText time = new TimeText();
    private final byte delimiter;
    private final byte decimalMark;
    private final int[] slots;
    private final boolean[] stamps;
    private final TraceUnit[] units;
    private final int[] wanted;
    private final double[] values;
    private final int lastWanted;
    private byte[] buffer = new byte[BUFFER + 1];
    private int limit;
    private int at;
    private boolean ended;
    private boolean anyReadable;
    /** Told only when the line has a time: a line without one is told of as a whole. */
    private final List<Unreadable> unreadable = new ArrayList<>();
    private long line = 1;
    private long total;

    /**
     * Prepares to read.
     *
     * @param in bytes of the text in UTF-8 or Latin-1, without byte order mark
     * @param wanted which columns of the file to read, first is 0; the first of them is the time
     * @param bytesRead told the number of bytes taken so far, once a buffer
     */
    LogScanner(InputStream in, LogHead head, int[] wanted, RowSink sink, LongConsumer bytesRead) {
        this.in = in;
        this.head = head;
        this.sink = sink;
        this.bytesRead = bytesRead;
        this.wanted = wanted.clone();
        delimiter = (byte) head.delimiter();
        decimalMark = (byte) (head.decimalComma() ? ',' : '.');
        values = new double[wanted.length];
        int width = head.columns().size();
        slots = new int[width + 1];
        stamps = new boolean[width + 1];
        units = new TraceUnit[width + 1];
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

    /** Reads to the end. */
    void scan() throws IOException {
        fill(0);
        while (at < limit || !ended) {
            int start = at;
            if (at >= limit || !row()) {
                fill(start); // also where a line ends just where the buffer does
            }
        }
    }

    /** Keeps what begins at {@code from}, reads more behind it; at the end of the file closes an unfinished last line. */
    private void fill(int from) throws IOException {
        int kept = limit - from;
        if (kept + 1 >= buffer.length - 1) {
            if (buffer.length > LONGEST_LINE) {
                throw new Refused(Problem.of("line " + line + " is longer than " + (LONGEST_LINE >> 20) + " MB", Place.of(head.name(), (int) line, 0),
                        "a text with line ends", "Check that this is a log written as delimited text."));
            }
            buffer = Arrays.copyOf(buffer, buffer.length * 2);
        }
        System.arraycopy(buffer, from, buffer, 0, kept);
        limit = kept;
        at = 0;
        int room = buffer.length - 2 - limit;
        int read = 0;
        while (read < room) {
            int got = in.read(buffer, limit, room - read);
            if (got < 0) {
                ended = true;
                break;
            }
            read += got;
            limit += got;
            total += got;
        }
        if (ended && limit > 0 && buffer[limit - 1] != '\n') {
            buffer[limit++] = '\n';
        }
        buffer[limit] = '\n';
        bytesRead.accept(total);
    }

    /** Reads one line; false when it is not yet whole. */
    private boolean row() {
        byte[] bytes = buffer;
        int p = at;
        int start = p;
        int column = 0;
        anyReadable = false;
        unreadable.clear();
        Arrays.fill(values, Double.NaN);
        boolean data = line >= head.firstDataLine() && !isRemark(bytes, p);
        if (data) {
            while (true) {
                int slot = slots[column];
                p = slot == SKIP ? skip(bytes, p) : stamps[column] ? stamp(bytes, p, slot) : number(bytes, p, slot, column);
                if (bytes[p] != delimiter || p >= limit) {
                    break;
                }
                p++;
                if (++column > lastWanted) {
                    break;
                }
            }
        }
        while (bytes[p] != '\n' && bytes[p] != '\r') {
            p++;
        }
        if (p >= limit || bytes[p] == '\r' && p + 1 >= limit && !ended) {
            return false;
        }
        if (data) {
            deliver(bytes, start, p);
        }
        at = bytes[p] == '\r' && bytes[p + 1] == '\n' && p + 1 < limit ? p + 2 : p + 1;
        line++;
        return true;
    }

    private void deliver(byte[] bytes, int start, int end) {
        boolean timed = !Double.isNaN(values[0]);
        if (timed && !unreadable.isEmpty()) {
            unreadable.forEach(cell -> sink.unreadable(line, cell.slot(), cell.text()));
        }
        if (timed && anyReadable) {
            sink.row(line, values);
        } else if (!isBlank(bytes, start, end)) {
            explain(bytes, start, end);
        }
    }

    private void explain(byte[] bytes, int start, int end) {
        String text = new String(bytes, start, end - start, StandardCharsets.UTF_8);
        DelimitedLine cells = DelimitedLine.split(text, head.delimiter(), 1).get(0);
        String timeName = head.columns().get(wanted[0]).name();
        boolean heading = cells.cells().size() > wanted[0] && cells.cells().get(wanted[0]).text().strip().equals(timeName);
        sink.skipped(line, heading ? "repeats the heading" : Double.isNaN(values[0]) ? "has no readable time" : "has a time and nothing else");
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
        int p = from;
        if (bytes[p] == '"') {
            return endOfQuoted(bytes, p);
        }
        byte c = bytes[p];
        while (c != delimiter && c != '\n' && c != '\r') {
            c = bytes[++p];
        }
        return p;
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

    private int number(byte[] bytes, int from, int slot, int column) {
        int p = from;
        byte c = bytes[p];
        boolean quoted = c == '"';
        if (quoted) {
            c = bytes[++p];
        }
        boolean negative = c == '-';
        if (negative) {
            c = bytes[++p];
        }
        long mantissa = 0;
        int first = p;
        while (c >= '0' && c <= '9') {
            mantissa = mantissa * 10 + (c - '0');
            c = bytes[++p];
        }
        int digits = p - first;
        int fraction = 0;
        if (c == decimalMark && decimalMark != delimiter) {
            int mark = p;
            c = bytes[++p];
            while (c >= '0' && c <= '9') {
                mantissa = mantissa * 10 + (c - '0');
                c = bytes[++p];
            }
            fraction = p - mark - 1;
            digits += fraction;
        }
        if (quoted && c == '"') {
            c = bytes[++p];
        } else if (quoted) {
            digits = 0;
        }
        if (digits > 0 && digits <= Decimals.EXACT_DIGITS && (c == delimiter || c == '\n' || c == '\r')) {
            double number = fraction == 0 ? mantissa : mantissa / Decimals.powerOfTen(fraction);
            values[slot] = negative ? -number : number;
            anyReadable |= slot != 0;
            return p;
        }
        return otherNumber(bytes, from, slot, column);
    }

    private int otherNumber(byte[] bytes, int from, int slot, int column) {
        int end = skip(bytes, from);
        if (end >= limit) {
            return end; // the line is not whole yet
        }
        String cell = text(bytes, from, end);
        if (Table.isMissing(cell)) {
            return end;
        }
        double number = CellNumber.of(cell, head.decimalComma(), units[column]);
        if (Double.isNaN(number)) {
            unreadable.add(new Unreadable(slot, cell));
        } else {
            values[slot] = number;
            anyReadable |= slot != 0;
        }
        return end;
    }

    private int stamp(byte[] bytes, int from, int slot) {
        int end = skip(bytes, from);
        if (end < limit) {
            values[slot] = time.seconds(bytes, from, end);
            if (Double.isNaN(values[slot])) {
                unreadable.add(new Unreadable(slot, text(bytes, from, end)));
            }
        }
        return end;
    }

    private static String text(byte[] bytes, int from, int end) {
        boolean quoted = end - from >= 2 && bytes[from] == '"' && bytes[end - 1] == '"';
        return new String(bytes, quoted ? from + 1 : from, quoted ? end - from - 2 : end - from, StandardCharsets.UTF_8).strip();
    }
}
