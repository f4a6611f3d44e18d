package coldproof.stats;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/** A table of check values among the test resources: comma separated, quotes where needed, lines that begin with # say where it is from. */
public final class DataTable {
    private final String name;
    private final List<Map<String, String>> rows;

    private DataTable(String name, List<Map<String, String>> rows) {
        this.name = name;
        this.rows = rows;
    }

    /** Reads a table below {@code coldproof/stats}. */
    public static DataTable read(String name) {
        try (InputStream in = DataTable.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalArgumentException("no test resource " + name);
            }
            BufferedReader reader = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8));
            List<Map<String, String>> rows = new ArrayList<>();
            List<String> header = null;
            for (String line = reader.readLine(); line != null; line = reader.readLine()) {
                if (line.startsWith("#") || line.isBlank()) {
                    continue;
                }
                List<String> fields = fields(line);
                if (header == null) {
                    header = fields;
                    continue;
                }
                if (fields.size() != header.size()) {
                    throw new IllegalStateException(name + ": " + fields.size() + " fields in: " + line);
                }
                Map<String, String> row = new LinkedHashMap<>();
                for (int i = 0; i < fields.size(); i++) {
                    row.put(header.get(i), fields.get(i));
                }
                rows.add(row);
            }
            return new DataTable(name, rows);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<String> fields(String line) {
        List<String> fields = new ArrayList<>();
        StringBuilder field = new StringBuilder();
        boolean quoted = false;
        for (int i = 0; i < line.length(); i++) {
            char c = line.charAt(i);
            if (c == '"') {
                quoted = !quoted;
            } else if (c == ',' && !quoted) {
                fields.add(field.toString());
                field.setLength(0);
            } else {
                field.append(c);
            }
        }
        fields.add(field.toString());
        return fields;
    }

    /** The rows for which the column holds the value. */
    public DataTable where(String column, String value) {
        return where(row -> value.equals(row.get(column)));
    }

    /** The rows that satisfy a condition. */
    public DataTable where(Predicate<Map<String, String>> condition) {
        return new DataTable(name, rows.stream().filter(condition).collect(Collectors.toList()));
    }

    public List<Map<String, String>> rows() {
        return rows;
    }

    public int size() {
        return rows.size();
    }

    /** The only row's number. */
    public double number(String column) {
        if (rows.size() != 1) {
            throw new IllegalStateException(name + ": " + rows.size() + " rows where one was expected");
        }
        return Double.parseDouble(rows.get(0).get(column));
    }

    public double[] numbers(String column) {
        return rows.stream().mapToDouble(row -> Double.parseDouble(row.get(column))).toArray();
    }

    public String[] texts(String column) {
        return rows.stream().map(row -> row.get(column)).toArray(String[]::new);
    }

    /** The values of a column in the order in which they first appear. */
    public List<String> distinct(String column) {
        return rows.stream().map(row -> row.get(column)).distinct().collect(Collectors.toList());
    }

    /** Each row's index into {@link #distinct}. */
    public int[] codes(String column) {
        List<String> levels = distinct(column);
        return rows.stream().mapToInt(row -> levels.indexOf(row.get(column))).toArray();
    }
}
