package coldproof.trace;

import java.util.Arrays;

/**
 * A column of a log as its first rows show it.
 *
 * @param index which column of the file, first is 0
 * @param name heading as written
 * @param unit unit found in a line of units or behind the numbers, empty when there is none
 * @param kind what its cells are
 * @param values the first rows as numbers; NaN where missing. Times of day in s since midnight, dates in s since 1970
 */
public record ColumnSample(int index, String name, String unit, CellKind kind, double[] values) {
    /** What the cells of a column hold. */
    public enum CellKind {
        /** Numbers, perhaps with a unit behind them. */
        NUMBER,
        /** Date and time of day. */
        DATE_TIME,
        /** Time of day without a date, or a running time such as 0:01:15. */
        TIME_OF_DAY,
        /** Anything else. */
        TEXT
    }

    /** Copies its array. */
    public ColumnSample {
        values = values.clone();
    }

    @Override
    public double[] values() {
        return values.clone();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof ColumnSample column && index == column.index && name.equals(column.name) && unit.equals(column.unit)
                && kind == column.kind && Arrays.equals(values, column.values);
    }

    @Override
    public int hashCode() {
        return 31 * name.hashCode() + index;
    }

    @Override
    public String toString() {
        return name + " (" + values.length + " rows)";
    }
}
