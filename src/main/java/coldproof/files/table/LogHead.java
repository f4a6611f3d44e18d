package coldproof.files.table;

import coldproof.trace.ColumnSample;
import coldproof.trace.ColumnSample.CellKind;
import coldproof.trace.TraceUnit;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * What the beginning of a log tells about it.
 *
 * @param name the file as the person knows it
 * @param columns the columns with their first rows
 * @param delimiter what stands between cells
 * @param decimalComma whether numbers have a decimal comma
 * @param firstDataLine no line before this one holds data, first is 1
 */
public record LogHead(String name, List<ColumnSample> columns, char delimiter, boolean decimalComma, int firstDataLine) {
    /** Copies its list. */
    public LogHead {
        columns = List.copyOf(columns);
    }

    /** Names of the columns as written. */
    public List<String> names() {
        return columns.stream().map(ColumnSample::name).toList();
    }

    /** Numbers of the columns a name may mean, first is 0, by the rules of {@link Table#column}; empty when there is none. */
    public List<Integer> find(String wanted) {
        return ColumnNames.find(names(), wanted);
    }

    static LogHead of(String name, String sample) {
        Layout layout = Layout.of(sample);
        SampleCells cells = SampleCells.of(sample, layout);
        boolean decimalComma = usesDecimalComma(cells, layout.delimiter() == ',');
        List<ColumnSample> columns = new ArrayList<>();
        for (int i = 0; i < layout.columns().size(); i++) {
            columns.add(sample(i, layout, cells, decimalComma));
        }
        return new LogHead(name, columns, layout.delimiter(), decimalComma, layout.firstDataLine());
    }

    /** Between commas, quoted numbers with a comma may be thousands: there no number may have a point, and not all three digits behind. */
    private static boolean usesDecimalComma(SampleCells cells, boolean betweenCommas) {
        int commas = cells.numbersWith(',');
        int points = cells.numbersWith('.');
        return betweenCommas ? points == 0 && cells.mayBeThousands() < commas : commas > points;
    }

    private static ColumnSample sample(int index, Layout layout, SampleCells cells, boolean decimalComma) {
        int[] kinds = new int[CellKind.values().length];
        TimeText time = new TimeText();
        String unit = layout.units().get(index);
        double[] numbers = new double[cells.rows()];
        double[] times = new double[cells.rows()];
        for (int i = 0; i < cells.rows(); i++) {
            times[i] = Double.NaN;
            numbers[i] = cells.plainDigits(i, index, decimalComma);
            boolean plain = !Double.isNaN(numbers[i]);
            String cell = plain ? "" : cells.text(i, index);
            if (plain || !Table.isMissing(cell)) {
                if (!plain) {
                    String own = CellNumber.unitIn(cell);
                    if (unit.isEmpty() && TraceUnit.named(own).isPresent()) {
                        unit = own;
                    }
                    numbers[i] = CellNumber.of(cell, decimalComma, TraceUnit.named(unit).orElse(null));
                    byte[] bytes = cell.getBytes(StandardCharsets.UTF_8);
                    times[i] = time.seconds(bytes, 0, bytes.length);
                }
                kinds[(Double.isNaN(numbers[i]) ? time.kind() : CellKind.NUMBER).ordinal()]++;
            }
        }
        CellKind kind = CellKind.NUMBER;
        for (CellKind candidate : CellKind.values()) {
            kind = kinds[candidate.ordinal()] > kinds[kind.ordinal()] ? candidate : kind;
        }
        boolean stamped = kind == CellKind.DATE_TIME || kind == CellKind.TIME_OF_DAY;
        return new ColumnSample(index, layout.columns().get(index), unit, kind, stamped ? times : numbers);
    }
}
