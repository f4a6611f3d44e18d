package coldproof.report.page;

import coldproof.reason.limiter.LimiterTrial;
import coldproof.report.text.Figures;
import coldproof.report.text.LimiterText;
import coldproof.trace.Channel;
import coldproof.trace.TraceSummary;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Telemetry of the trials: curves by condition, phases, and what each trace shows. */
final class TraceSection {
    private TraceSection() {}

    static Optional<Section> of(StudyContent content) {
        if (content.traces().trials().isEmpty() && content.traces().unread().isEmpty()) {
            return Optional.empty();
        }
        List<Block> blocks = new ArrayList<>();
        if (!content.traces().unread().isEmpty()) {
            blocks.add(new Block.Notice("TRACES LEFT OUT", content.traces().unread().size() + " could not be read: " + String.join("; ", content.traces().unread()) + "."));
        }
        if (!content.traces().trials().isEmpty()) {
            List<ConditionTraces> conditions = ConditionTraces.of(content.traces());
            new TracePlots(conditions).plots().forEach(plot -> blocks.add(new Block.Drawing(plot)));
            blocks.add(new Block.Drawing(PhasePlot.of(conditions)));
            blocks.add(table(content.traces().trials()));
        }
        return Optional.of(new Section("traces", "Telemetry", blocks));
    }

    private static Block table(List<LimiterTrial> trials) {
        List<List<String>> rows = new ArrayList<>();
        for (LimiterTrial trial : trials) {
            TraceSummary trace = trial.trace();
            rows.add(List.of(Figures.fixed(trial.order(), 0), LimiterText.name(trial.levels()), Figures.fixed(trace.boost().seconds(), 1), level(trace, trace.powerChannel()),
                    level(trace, Channel.CLOCK), level(trace, Channel.DIE_TEMPERATURE), level(trace, Channel.FAN), Figures.fixed(trace.thermal().timeConstantSeconds(), 1),
                    Figures.fixed(trace.energyWattHours(), 3), trace.isSteady() ? "yes" : "no"));
        }
        return new Block.Grid("What each trace shows: boost, and means over the last half of the work", List.of(Block.Column.numbers("trial"), Block.Column.words("condition"),
                Block.Column.numbers("boost, s"), Block.Column.numbers("power, W"), Block.Column.numbers("clock, MHz"), Block.Column.numbers("die, °C"),
                Block.Column.numbers("fan, rpm"), Block.Column.numbers("time constant, s"), Block.Column.numbers("energy, Wh"), Block.Column.words("steady")), rows);
    }

    private static String level(TraceSummary trace, Channel channel) {
        return level(trace.mean(channel).orElse(Double.NaN));
    }

    static String level(double value) {
        return Figures.fixed(value, Math.abs(value) >= 1000 ? 0 : 1);
    }
}
