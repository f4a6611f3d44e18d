package coldproof.files.table;

import coldproof.quantity.NearestWord;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.QuantityText;
import coldproof.quantity.Refused;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * A delimited text read whole: names of the columns and rows of cells, each with its place. Numbers are read on demand, so that only the
 * columns that matter must hold numbers. Immutable.
 */
public final class Table {
    private static final Set<String> MISSING = Set.of("", "-", "--", "?", "n/a", "na", "nan", "null", "none", "nil", "missing", "#n/a");

    private final String name;
    private final List<String> columns;
    private final List<String> units;
    private final List<Row> rows;
    private List<DecimalMarks> decimalMarks; // by column; found when the first number is asked for, since that takes a look at every cell

    /**
     * A table of these rows.
     *
     * @param name the file as the person knows it
     * @param columns names as written; a name may stand more than once
     * @param units unit of each column where a line of units follows the names, else empty texts
     * @param rows rows of data, in the order of the file, each with as many cells as there are columns
     */
    public Table(String name, List<String> columns, List<String> units, List<Row> rows) {
        this.name = name;
        this.columns = List.copyOf(columns);
        this.units = List.copyOf(units);
        this.rows = List.copyOf(rows);
    }

    /** The file as the person knows it. */
    public String name() {
        return name;
    }

    /** Names as written; a name may stand more than once. */
    public List<String> columns() {
        return columns;
    }

    /** Unit of each column where a line of units follows the names, else empty texts. */
    public List<String> units() {
        return units;
    }

    /** Rows of data, in the order of the file, each with as many cells as there are columns. */
    public List<Row> rows() {
        return rows;
    }

    /**
     * A row of data.
     *
     * @param line line of its first character in the file, first is 1
     * @param cells one text for each column, blanks taken off their ends, quotes taken off
     * @param places line and column of each cell
     * @param source the line as it stands in the file
     */
    public record Row(int line, List<String> cells, List<CellPlace> places, String source) {
        /** Copies its lists. */
        public Row {
            cells = List.copyOf(cells);
            places = List.copyOf(places);
        }

        /** Text of a cell; empty when the cell is. */
        public String text(int column) {
            return cells.get(column);
        }
    }

    /**
     * Where a cell starts.
     *
     * @param line first is 1
     * @param column first is 1
     */
    public record CellPlace(int line, int column) {}

    /**
     * Number of the column with this name, first is 0. An exact match wins; then one that differs only in upper and lower case; then one
     * that differs only in blanks, underscores and a unit in brackets. {@code Name#2} is the second column of that name.
     *
     * @param wanted the name the person gave
     * @param askedBy where they gave it, such as {@code --metric}; shown in the problem
     * @throws Refused if no column or more than one has the name
     */
    public int column(String wanted, String askedBy) {
        List<Integer> found = ColumnNames.find(columns, wanted);
        if (found.size() == 1) {
            return found.get(0);
        }
        Place where = Place.named(askedBy);
        Set<String> distinct = new LinkedHashSet<>(columns);
        if (found.isEmpty()) {
            throw new Refused(new Problem(name + " has no column \"" + wanted + "\"", where,
                    "one of its columns: " + String.join(", ", distinct), NearestWord.of(wanted, distinct),
                    "Give the name as it stands in the heading of " + name + "."));
        }
        String first = columns.get(found.get(0));
        throw new Refused(Problem.of(name + " has " + found.size() + " columns that \"" + wanted + "\" may mean", where,
                "the name of one column", "Write " + first + "#1 for the first of them, " + first + "#2 for the second, and so on."));
    }

    /** Whether a cell says that there is no value: blank, a dash, {@code N/A} and the like. */
    public static boolean isMissing(String cell) {
        return MISSING.contains(cell.strip().toLowerCase(Locale.ROOT));
    }

    /**
     * The number in a cell, with a decimal point or comma.
     *
     * @throws Refused if the cell is missing, is no number, or could mean two numbers
     */
    public double number(Row row, int column) {
        Problem[] problem = new Problem[1];
        double number = number(row, column, decimalMarks(column), problem);
        if (problem[0] != null) {
            throw new Refused(problem[0]);
        }
        return number;
    }

    /**
     * The number in a cell, or none where the cell says that there is none.
     *
     * @throws Refused if the cell holds something that is no number
     */
    public OptionalDouble numberIfPresent(Row row, int column) {
        return isMissing(row.text(column)) ? OptionalDouble.empty() : OptionalDouble.of(number(row, column));
    }

    /** Whether a cell holds a number that can be read without doubt. */
    public boolean isNumber(Row row, int column) {
        Problem[] problem = new Problem[1];
        number(row, column, decimalMarks(column), problem);
        return problem[0] == null;
    }

    /**
     * The numbers of a whole column, a row each.
     *
     * @throws Refused with a problem for every cell that holds no number
     */
    public double[] numbers(int column) {
        List<Problem> problems = new ArrayList<>();
        double[] numbers = new double[rows.size()];
        DecimalMarks marks = decimalMarks(column);
        for (int i = 0; i < numbers.length; i++) {
            Problem[] problem = new Problem[1];
            numbers[i] = number(rows.get(i), column, marks, problem);
            if (problem[0] != null) {
                problems.add(problem[0]);
            }
        }
        if (!problems.isEmpty()) {
            throw new Refused(problems);
        }
        return numbers;
    }

    /** Where a cell stands, with its line. */
    public Place place(Row row, int column) {
        CellPlace place = row.places().get(column);
        String source = place.line() == row.line() ? row.source() : "";
        return new Place(name, place.line(), place.column(), source, Math.max(1, row.text(column).length()));
    }

    private double number(Row row, int column, DecimalMarks marks, Problem[] problem) {
        String cell = row.text(column);
        String heading = columns.get(column);
        if (isMissing(cell)) {
            problem[0] = Problem.of(cell.isEmpty() ? "no value for \"" + heading + "\"" : "\"" + cell + "\" stands for no value of \"" + heading
                    + "\"", place(row, column), "a number", "Fill in the value, or take the row out.");
            return Double.NaN;
        }
        if (cell.indexOf(',') >= 0 && marks.commaMeansTwoThings()) {
            problem[0] = Problem.of("\"" + cell + "\" has a comma where " + marks.elsewhere() + " a decimal point", place(row, column),
                    "one decimal mark throughout, and none between thousands", "Write the number without the comma, or with a point.");
            return Double.NaN;
        }
        try {
            return QuantityText.number(cell);
        } catch (QuantityText.Unreadable unreadable) {
            problem[0] = Problem.of("\"" + cell + "\" is " + unreadable.getMessage() + " (column \"" + heading + "\")", place(row, column),
                    "a number, such as 51.13 or 51,13",
                    "Correct the cell, or take the row out; a unit belongs in the heading.");
            return Double.NaN;
        }
    }

    private DecimalMarks decimalMarks(int column) {
        if (decimalMarks == null) {
            decimalMarks = DecimalMarks.of(this); // found twice by two threads, it is the same
        }
        return decimalMarks.get(column);
    }
}
