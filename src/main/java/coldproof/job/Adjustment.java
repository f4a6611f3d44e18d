package coldproof.job;

import coldproof.files.table.Table;
import coldproof.quantity.Refused;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.stream.IntStream;

/**
 * How the columns to adjust for enter: the run order, and numbers with more than {@value #MOST_LEVELS} different values, as straight lines on the log score;
 * all else as factors. The run order counts from the middle of its session, so that it stands for what happens inside one.
 */
final class Adjustment {
    private static final int MOST_LEVELS = 5;
    private static final double MOSTLY = 0.8; // share of numbers from which a cell that is none is a slip of the pen

    private final List<Integer> columns;
    private final OptionalInt order;
    private final OptionalInt session;

    Adjustment(List<Integer> columns, OptionalInt order, OptionalInt session) {
        this.columns = columns;
        this.order = order;
        this.session = session;
    }

    /** The columns that are factors. */
    List<Integer> factors(Table table) {
        return columns.stream().filter(column -> !isLine(table, column)).toList();
    }

    /** The covariates of each row. */
    List<List<Double>> covariates(Table table) {
        List<double[]> lines = columns.stream().filter(column -> isLine(table, column)).map(column -> line(table, column)).toList();
        return IntStream.range(0, table.rows().size()).mapToObj(row -> lines.stream().map(line -> line[row]).toList()).toList();
    }

    private boolean isLine(Table table, int column) {
        if (order.isPresent() && order.getAsInt() == column) {
            return true;
        }
        return table.rows().stream().map(row -> row.text(column)).distinct().count() > MOST_LEVELS && isNumeric(table, column);
    }

    /** Whether nearly all cells are numbers; the others are then mistakes, and reading them says which. */
    private static boolean isNumeric(Table table, int column) {
        long numbers = table.rows().stream().filter(row -> isNumber(new Table(table.name(), table.columns(), table.units(), List.of(row)), column)).count();
        return numbers >= MOSTLY * table.rows().size();
    }

    private static boolean isNumber(Table oneRow, int column) {
        try {
            oneRow.numbers(column);
            return true;
        } catch (Refused word) {
            return false; // documented: a cell that is no number
        }
    }

    private double[] line(Table table, int column) {
        double[] values = table.numbers(column);
        boolean places = order.isPresent() && order.getAsInt() == column;
        if (!places) {
            return values;
        }
        Map<String, List<Double>> bySession = new HashMap<>();
        IntStream.range(0, values.length).forEach(i -> bySession.computeIfAbsent(label(table, i), label -> new ArrayList<>()).add(values[i]));
        return IntStream.range(0, values.length)
                .mapToDouble(i -> values[i] - bySession.get(label(table, i)).stream().mapToDouble(Double::doubleValue).average().orElse(0)).toArray();
    }

    private String label(Table table, int row) {
        return session.isPresent() ? table.rows().get(row).text(session.getAsInt()) : "";
    }
}
