package coldproof.reason.limiter;

import coldproof.reason.rehearse.bench.BenchTrace;
import coldproof.reason.rehearse.bench.BenchTrial;
import coldproof.trace.Channel;
import coldproof.trace.ChannelMap;
import coldproof.trace.ChannelMap.MappedColumn;
import coldproof.trace.ColumnSample.CellKind;
import coldproof.trace.TraceAccumulator;
import coldproof.trace.TraceSummaries;
import coldproof.trace.TraceSummary;
import coldproof.trace.TraceUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;

/** Trials of the bench simulator as the limiter sees them. */
final class BenchLimiterTrials {
    private static final Map<BenchTrace.Channel, MappedColumn> COLUMNS = Map.of(
            BenchTrace.Channel.DIE_CELSIUS, column(1, Channel.DIE_TEMPERATURE, TraceUnit.CELSIUS),
            BenchTrace.Channel.PACKAGE_WATTS, column(2, Channel.PACKAGE_POWER, TraceUnit.WATT),
            BenchTrace.Channel.MEGAHERTZ, column(3, Channel.CLOCK, TraceUnit.MEGAHERTZ),
            BenchTrace.Channel.FAN_RPM, column(4, Channel.FAN, TraceUnit.RPM),
            BenchTrace.Channel.UTILISATION_PERCENT, column(5, Channel.UTILISATION, TraceUnit.PERCENT),
            BenchTrace.Channel.BATTERY_PERCENT, column(6, Channel.BATTERY_CHARGE, TraceUnit.PERCENT),
            BenchTrace.Channel.AIR_CELSIUS, column(7, Channel.AMBIENT, TraceUnit.CELSIUS));

    private BenchLimiterTrials() {}

    private static MappedColumn column(int index, Channel channel, TraceUnit unit) {
        return new MappedColumn(index, channel.label(), channel, unit, CellKind.NUMBER, ChannelMap.Origin.SET);
    }

    static LimiterTrial of(BenchTrial trial, Map<String, String> levels, String session, double order, boolean withScore, boolean withLoops) {
        return of(trial, levels, session, order, withScore, withLoops, Set.of());
    }

    /** The same from a log that lacks some channels. */
    static LimiterTrial of(BenchTrial trial, Map<String, String> levels, String session, double order, boolean withScore, boolean withLoops, Set<Channel> lacking) {
        LimiterTrial.Loops loops = withLoops ? LimiterTrial.Loops.ofRates(trial.loopRates()) : LimiterTrial.Loops.NONE;
        return new LimiterTrial(levels, session, order, summary(trial.trace(), lacking), withScore ? Math.log(trial.score()) : Double.NaN, loops);
    }

    private static TraceSummary summary(BenchTrace trace, Set<Channel> lacking) {
        MappedColumn time = column(0, Channel.TIME, TraceUnit.SECOND);
        List<BenchTrace.Channel> logged = new ArrayList<>(COLUMNS.keySet());
        logged.removeIf(channel -> lacking.contains(COLUMNS.get(channel).channel()));
        logged.sort((a, b) -> Integer.compare(COLUMNS.get(a).index(), COLUMNS.get(b).index()));
        TraceAccumulator accumulator = new TraceAccumulator(new ChannelMap(time, logged.stream().map(COLUMNS::get).toList()));
        double[][] values = new double[logged.size() + 1][];
        values[0] = trace.values(BenchTrace.Channel.SECONDS);
        for (int i = 0; i < logged.size(); i++) {
            values[i + 1] = trace.values(logged.get(i));
        }
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
