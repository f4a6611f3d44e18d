package coldproof.report.export;

import java.util.List;
import java.util.Optional;

/**
 * A table with one row for each thing observed.
 *
 * @param name one word, the name of its file without ending
 * @param meaning what a row is, one sentence
 * @param columns its columns, in order
 * @param rows one cell a column: a {@code Long}, {@code Double} or {@code String}, empty where there is none
 */
public record TidyTable(String name, String meaning, List<Column> columns, List<List<Optional<Object>>> rows) {
    /** Copies the lists; refuses a row with another number of cells than columns. */
    public TidyTable {
        columns = List.copyOf(columns);
        rows = rows.stream().map(List::copyOf).toList();
        for (List<Optional<Object>> row : rows) {
            if (row.size() != columns.size()) {
                throw new IllegalArgumentException(row.size() + " cells for " + columns.size() + " columns of " + name);
            }
        }
    }

    /** What the cells of a column are. */
    public enum Type {
        /** A whole number. */
        WHOLE("whole number"),
        /** A decimal number, with a point. */
        NUMBER("number"),
        /** Text. */
        TEXT("text"),
        /** Date and time with the offset from UTC, ISO 8601. */
        TIME("time");

        private final String word;

        Type(String word) {
            this.word = word;
        }

        /** The word in the dictionary. */
        public String word() {
            return word;
        }
    }

    /**
     * A column.
     *
     * @param name lower case, without spaces
     * @param type what its cells are
     * @param unit unit of its numbers, empty where there is none
     * @param meaning one sentence
     */
    public record Column(String name, Type type, String unit, String meaning) {}
}
