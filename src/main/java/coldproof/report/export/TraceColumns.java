package coldproof.report.export;

import coldproof.reason.limiter.LimiterTrial;
import coldproof.report.export.TidyTable.Column;
import coldproof.report.export.TidyTable.Type;
import coldproof.report.text.TracePlot;
import coldproof.trace.Channel;
import coldproof.trace.TraceSummary;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** The table of traces: what each shows, one row a trial. */
public final class TraceColumns {
    private final List<Column> columns = new ArrayList<>();
    private final List<Function<LimiterTrial, Optional<Object>>> cells = new ArrayList<>();

    private TraceColumns(List<LimiterTrial> trials) {
        add("trial", Type.WHOLE, "", "place of the trial in the run sheet", trial -> Optional.of(Math.round(trial.order())));
        add("rows", Type.WHOLE, "", "rows of the log", trial -> Optional.of(trial.trace().rows()));
        number("sampling", "s", "usual time between two rows", TraceSummary::samplingSeconds);
        add("gaps", Type.WHOLE, "", "how often rows were missing", trial -> Optional.of((long) trial.trace().gaps()));
        number("work", "s", "length of the work", trace -> trace.work().lengthSeconds());
        number("boost", "s", "length of the boost", trace -> trace.boost().seconds());
        number("settle", "s", "from the start of the work until power, clock and die temperature stay near what is sustained", TraceSummary::settleSeconds);
        for (Channel channel : Channel.values()) {
            if (channel != Channel.TIME && trials.stream().anyMatch(trial -> trial.trace().level(channel).isPresent())) {
                number(channel.label().replace(' ', '_'), TracePlot.unit(channel), "mean of the " + channel.label() + " over the last half of the work",
                        trace -> trace.mean(channel).orElse(Double.NaN));
            }
        }
        number("time_constant", "s", "of the die on its way to the sustained temperature", trace -> trace.thermal().timeConstantSeconds());
        number("die_to_air", "K/W", "(die - air) / package power over the last half of the work", trace -> trace.thermal().kelvinsPerWatt());
        number("energy", "Wh", "energy of the work", TraceSummary::energyWattHours);
        add("steady", Type.TEXT, "", "whether nothing moved any more in the last half: yes or no", trial -> Optional.of(trial.trace().isSteady() ? "yes" : "no"));
    }

    /** The table of these trials, in their order. */
    public static TidyTable table(List<LimiterTrial> trials) {
        TraceColumns made = new TraceColumns(trials);
        List<List<Optional<Object>>> rows = trials.stream().map(trial -> made.cells.stream().map(cell -> cell.apply(trial)).toList()).toList();
        return new TidyTable("traces", "what the trace of one trial shows", made.columns, rows);
    }

    private void number(String name, String unit, String meaning, Function<TraceSummary, Double> value) {
        add(name, Type.NUMBER, unit, meaning, trial -> Optional.of(value.apply(trial.trace())).filter(Double::isFinite).map(number -> number));
    }

    private void add(String name, Type type, String unit, String meaning, Function<LimiterTrial, Optional<Object>> cell) {
        columns.add(new Column(name, type, unit, meaning));
        cells.add(cell);
    }
}
