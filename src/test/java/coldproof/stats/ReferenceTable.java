package coldproof.stats;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * A table of expected values: lines beginning with {@code #} say which program made it, then a header, then comma-separated rows.
 */
public final class ReferenceTable {
    private final String name;
    private final List<String> columns;
    private final List<String[]> rows;

    private ReferenceTable(String name, List<String> columns, List<String[]> rows) {
        this.name = name;
        this.columns = columns;
        this.rows = rows;
    }

    /** One row. */
    public final class Row {
        private final int line;
        private final String[] fields;

        private Row(int line, String[] fields) {
            this.line = line;
            this.fields = fields;
        }

        /** Text in a column. */
        public String text(String column) {
            int at = columns.indexOf(column);
            if (at < 0) {
                throw new IllegalArgumentException(name + " has no column " + column + ", only " + columns);
            }
            return fields[at];
        }

        /** Number in a column. */
        public double number(String column) {
            return Double.parseDouble(text(column));
        }

        /** Whole number in a column. */
        public int count(String column) {
            return Integer.parseInt(text(column));
        }

        /** Whether the column is filled. */
        public boolean has(String column) {
            return !text(column).isEmpty();
        }

        @Override
        public String toString() {
            return name + " row " + line + " " + String.join(",", fields);
        }
    }

    /** Reads {@code src/test/resources/coldproof/stats/} + {@code name}. */
    public static ReferenceTable read(String name) {
        try (InputStream in = ReferenceTable.class.getResourceAsStream("/coldproof/stats/" + name)) {
            if (in == null) {
                throw new IllegalArgumentException("no table " + name);
            }
            BufferedReader reader = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8));
            List<String[]> rows = new ArrayList<>();
            for (String line = reader.readLine(); line != null; line = reader.readLine()) {
                if (!line.startsWith("#")) {
                    rows.add(line.split(",", -1));
                }
            }
            return new ReferenceTable(name, List.of(rows.get(0)), rows.subList(1, rows.size()));
        } catch (IOException e) {
            throw new UncheckedIOException("reading " + name, e);
        }
    }

    /** All rows, in order. */
    public List<Row> rows() {
        List<Row> all = new ArrayList<>();
        for (int i = 0; i < rows.size(); i++) {
            all.add(new Row(i + 1, rows.get(i)));
        }
        return all;
    }
}
