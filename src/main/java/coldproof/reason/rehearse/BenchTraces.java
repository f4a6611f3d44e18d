package coldproof.reason.rehearse;

import coldproof.reason.rehearse.bench.BenchTrace;
import coldproof.trace.Channel;
import coldproof.trace.ChannelMap;
import coldproof.trace.ChannelMap.MappedColumn;
import coldproof.trace.ColumnSample.CellKind;
import coldproof.trace.TraceAccumulator;
import coldproof.trace.TraceSummaries;
import coldproof.trace.TraceSummary;
import coldproof.trace.TraceUnit;
import java.util.List;
import java.util.OptionalDouble;

/** Simulated telemetry as if it had been read from a log. */
public final class BenchTraces {
    private static final List<BenchTrace.Channel> LOGGED = List.of(BenchTrace.Channel.DIE_CELSIUS, BenchTrace.Channel.PACKAGE_WATTS, BenchTrace.Channel.MEGAHERTZ,
            BenchTrace.Channel.FAN_RPM, BenchTrace.Channel.UTILISATION_PERCENT, BenchTrace.Channel.BATTERY_PERCENT, BenchTrace.Channel.AIR_CELSIUS);

    private BenchTraces() {}

    private static MappedColumn column(BenchTrace.Channel logged, int index) {
        return switch (logged) {
            case DIE_CELSIUS -> column(index, Channel.DIE_TEMPERATURE, TraceUnit.CELSIUS);
            case PACKAGE_WATTS -> column(index, Channel.PACKAGE_POWER, TraceUnit.WATT);
            case MEGAHERTZ -> column(index, Channel.CLOCK, TraceUnit.MEGAHERTZ);
            case FAN_RPM -> column(index, Channel.FAN, TraceUnit.RPM);
            case UTILISATION_PERCENT -> column(index, Channel.UTILISATION, TraceUnit.PERCENT);
            case BATTERY_PERCENT -> column(index, Channel.BATTERY_CHARGE, TraceUnit.PERCENT);
            case AIR_CELSIUS -> column(index, Channel.AMBIENT, TraceUnit.CELSIUS);
            default -> throw new IllegalArgumentException(logged + " is not logged");
        };
    }

    private static MappedColumn column(int index, Channel channel, TraceUnit unit) {
        return new MappedColumn(index, channel.label(), channel, unit, CellKind.NUMBER, ChannelMap.Origin.SET);
    }

    /** What a simulated trace says. */
    public static TraceSummary summary(BenchTrace trace) {
        double[][] values = new double[LOGGED.size() + 1][];
        MappedColumn[] columns = new MappedColumn[LOGGED.size()];
        values[0] = trace.values(BenchTrace.Channel.SECONDS);
        for (int i = 0; i < columns.length; i++) {
            values[i + 1] = trace.values(LOGGED.get(i));
            columns[i] = column(LOGGED.get(i), i + 1);
        }
        TraceAccumulator accumulator = new TraceAccumulator(new ChannelMap(column(0, Channel.TIME, TraceUnit.SECOND), List.of(columns)));
        double[] row = new double[values.length];
        for (int i = 0; i < trace.size(); i++) {
            for (int j = 0; j < row.length; j++) {
                row[j] = values[j][i];
            }
            accumulator.row(i + 2, row);
        }
        return TraceSummaries.summarise(accumulator.series(), OptionalDouble.empty()).orElseThrow();
    }
}
