package coldproof.files.table;

import coldproof.trace.ColumnSample.CellKind;
import coldproof.trace.RowSink;
import coldproof.trace.TraceUnit;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/** Reads a log as a person would explain it, with strings and no regard for speed: the fast reader must tell the same. */
final class PlainLogReading {
    private final LogHead head;
    private final int[] wanted;
    private final RowSink sink;

    PlainLogReading(LogHead head, int[] wanted, RowSink sink) {
        this.head = head;
        this.wanted = wanted;
        this.sink = sink;
    }

    /** All lines of a text. */
    void read(String text) {
        String[] lines = text.split("\r\n|\r|\n", -1);
        boolean ended = lines[lines.length - 1].isEmpty();
        for (int i = 0; i < lines.length - (ended ? 1 : 0); i++) {
            if (i + 1 >= head.firstDataLine() && !lines[i].replaceFirst("^ +", "").startsWith("#")) {
                line(i + 1, lines[i]);
            }
        }
    }

    private void line(int number, String line) {
        List<String> cells = cells(line);
        double[] values = new double[wanted.length];
        Arrays.fill(values, Double.NaN);
        List<Integer> order = IntStream.range(0, wanted.length).boxed().filter(slot -> wanted[slot] < cells.size())
                .sorted(Comparator.comparing(slot -> wanted[slot])).toList();
        List<Integer> unreadable = new ArrayList<>();
        boolean any = false;
        for (int slot : order) {
            boolean missing = !isStamp(slot) && Table.isMissing(bare(cells.get(wanted[slot])));
            values[slot] = missing ? Double.NaN : value(slot, cells.get(wanted[slot]));
            if (Double.isNaN(values[slot]) && !missing) {
                unreadable.add(slot);
            }
            any |= slot > 0 && !Double.isNaN(values[slot]);
        }
        boolean timed = !Double.isNaN(values[0]);
        if (timed) {
            unreadable.forEach(slot -> sink.unreadable(number, slot, bare(cells.get(wanted[slot]))));
        }
        if (timed && any) {
            sink.row(number, values);
        } else if (!line.replaceAll("[ \t\"" + Pattern.quote("" + head.delimiter()) + "]", "").isEmpty()) {
            String name = head.columns().get(wanted[0]).name();
            List<String> texts = DelimitedLine.split(line, head.delimiter(), 1).get(0).texts();
            boolean heading = texts.size() > wanted[0] && texts.get(wanted[0]).strip().equals(name);
            sink.skipped(number, heading ? "repeats the heading" : timed ? "has a time and nothing else" : "has no readable time");
        }
    }

    private boolean isStamp(int slot) {
        CellKind kind = head.columns().get(wanted[slot]).kind();
        return kind == CellKind.DATE_TIME || kind == CellKind.TIME_OF_DAY;
    }

    private double value(int slot, String cell) {
        if (isStamp(slot)) {
            byte[] bytes = cell.getBytes(StandardCharsets.UTF_8);
            return new TimeText().seconds(bytes, 0, bytes.length);
        }
        return CellNumber.of(bare(cell), head.decimalComma(), TraceUnit.named(head.columns().get(wanted[slot]).unit()).orElse(null));
    }

    /** A cell that begins with a quote ends at a quote before a delimiter or at the end of its line. */
    private List<String> cells(String line) {
        List<String> cells = new ArrayList<>();
        int from = 0;
        while (true) {
            boolean quoted = from < line.length() && line.charAt(from) == '"';
            int end = quoted ? line.indexOf("\"" + head.delimiter(), from + 1) : line.indexOf(head.delimiter(), from);
            end += quoted && end >= 0 ? 1 : 0;
            if (end < 0) {
                cells.add(line.substring(from));
                return cells;
            }
            cells.add(line.substring(from, end));
            from = end + 1;
        }
    }

    private static String bare(String cell) {
        boolean quoted = cell.length() >= 2 && cell.startsWith("\"") && cell.endsWith("\"");
        return (quoted ? cell.substring(1, cell.length() - 1) : cell).strip();
    }
}
