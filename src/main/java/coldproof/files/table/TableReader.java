package coldproof.files.table;

import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * Reads a table of trials: comma, semicolon, tab or vertical bar; decimal point or comma; UTF-8, UTF-16 or Latin-1, with or without a byte
 * order mark; any line ends; quotes; remark lines ({@code #}); lines before the heading; a delimiter at the end of each line; plain or packed with gzip.
 */
public final class TableReader {
    private static final int LARGEST = 64 << 20; // bytes; a table of trials is small, a log of telemetry is read as a stream

    private TableReader() {}

    /**
     * Reads a file.
     *
     * @throws Refused if it is missing, not a file, empty, without a heading, too large, or has a row that does not fit the heading
     * @throws UncheckedIOException if reading fails for a reason outside the file
     */
    public static Table read(Path file) {
        String name = file.toString();
        return Unpacked.read(file, "a file of delimited text", in -> {
            byte[] bytes = in.readNBytes(LARGEST + 1);
            if (bytes.length > LARGEST) {
                throw refuse(name, "holds more than " + (LARGEST >> 20) + " MB: too much for a table of trials", "at most " + (LARGEST >> 20) + " MB",
                        "Give the table that has one row a trial; telemetry belongs in the files it names.");
            }
            return read(name, bytes);
        });
    }

    /**
     * Reads a table from memory.
     *
     * @param name what to call it in problems
     * @throws Refused if it is empty, without a heading, or has a row that does not fit the heading
     */
    public static Table read(String name, byte[] bytes) {
        String text = TextEncoding.of(bytes, bytes.length).decode(bytes);
        Layout layout = Layout.of(text);
        if (layout.headingLine() == 0) {
            throw refuse(name, text.isBlank() ? "is empty" : "has no line of column names", "a first line with the names of the columns",
                    "Write a name above each column.");
        }
        List<Table.Row> rows = new ArrayList<>();
        List<Problem> problems = new ArrayList<>();
        for (DelimitedLine line : DelimitedLine.split(text, layout.delimiter(), Integer.MAX_VALUE)) {
            boolean data = line.line() >= layout.firstDataLine() && !line.isBlank() && !line.isRemark();
            if (line.unclosed() && data) {
                problems.add(unclosed(name, line));
            } else if (data && !repeatsHeading(line, layout)) {
                if (line.filledWidth() > layout.columns().size()) {
                    problems.add(tooWide(name, line, layout));
                } else {
                    rows.add(row(line, layout.columns().size()));
                }
            }
        }
        if (!problems.isEmpty()) {
            throw new Refused(problems);
        }
        return new Table(name, layout.columns(), layout.units(), rows);
    }

    private static boolean repeatsHeading(DelimitedLine line, Layout layout) {
        if (line.filledWidth() < layout.columns().size()) {
            return false;
        }
        for (int i = 0; i < layout.columns().size(); i++) {
            if (!line.cells().get(i).text().strip().equals(layout.columns().get(i))) {
                return false;
            }
        }
        return true;
    }

    private static Table.Row row(DelimitedLine line, int width) {
        List<String> cells = new ArrayList<>();
        List<Table.CellPlace> places = new ArrayList<>();
        for (int i = 0; i < width; i++) {
            if (i < line.cells().size()) {
                DelimitedLine.Cell cell = line.cells().get(i);
                cells.add(cell.text().strip());
                places.add(new Table.CellPlace(cell.line(), cell.column()));
            } else {
                cells.add("");
                places.add(new Table.CellPlace(line.line(), line.source().length() + 1));
            }
        }
        return new Table.Row(line.line(), cells, places, line.source());
    }

    private static Problem tooWide(String name, DelimitedLine line, Layout layout) {
        int width = layout.columns().size();
        DelimitedLine.Cell extra = line.cells().get(width);
        String remedy = layout.delimiter() == ','
                ? "Put a number with a decimal comma, or a text with a comma, in double quotes; or separate the columns by semicolons."
                : "Put a text that holds the delimiter in double quotes.";
        return Problem.of("this line has " + line.filledWidth() + " cells, the heading names " + width + " columns",
                new Place(name, extra.line(), extra.column(), extra.line() == line.line() ? line.source() : "", 1),
                "as many cells as there are names in line " + layout.headingLine(), remedy);
    }

    private static Problem unclosed(String name, DelimitedLine line) {
        return Problem.of("a double quote is opened in this record and never closed", new Place(name, line.line(), 0, line.source(), 0),
                "a closing double quote", "Close the quote; a double quote inside a quoted text is written twice.");
    }

    private static Refused refuse(String name, String what, String expected, String remedy) {
        return new Refused(Problem.of(what, Place.named(name), expected, remedy));
    }
}
