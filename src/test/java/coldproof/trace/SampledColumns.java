package coldproof.trace;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntToDoubleFunction;

/** The first rows of a log, column by column, from formulas of the row. */
final class SampledColumns {
    private final int rows;
    private final List<ColumnSample> columns = new ArrayList<>();

    SampledColumns(int rows) {
        this.rows = rows;
    }

    /** Adds a column of numbers to the right. */
    void add(String name, IntToDoubleFunction values) {
        double[] numbers = new double[rows];
        for (int i = 0; i < rows; i++) {
            numbers[i] = values.applyAsDouble(i);
        }
        columns.add(new ColumnSample(columns.size(), name, "", ColumnSample.CellKind.NUMBER, numbers));
    }

    List<ColumnSample> all() {
        return columns;
    }
}
