package coldproof.report.text;

import coldproof.quantity.Counted;
import coldproof.trace.Channel;
import coldproof.trace.ChannelMap.MappedColumn;
import coldproof.trace.Level;
import coldproof.trace.Phase;
import coldproof.trace.Series;
import coldproof.trace.TraceRemark;
import coldproof.trace.TraceSummary;
import java.util.List;
import java.util.Map;

/** A trace as a person reads it: which column is what, the course drawn, the phases, the sustained levels, what heat does. */
public final class TraceText {
    private static final int MOST_REMARKS = 12;
    private static final int LABEL_COLUMNS = 15;
    private static final double NINETY_FIVE = 1.959963984540054; // standard normal, upper 2.5 %

    private final StringBuilder out = new StringBuilder();
    private final TraceSummary summary;
    private final int columns;

    private TraceText(TraceSummary summary, int columns) {
        this.summary = summary;
        this.columns = columns;
    }

    /** The whole answer for a screen of so many columns. */
    public static String of(String file, Series series, TraceSummary summary, int columns) {
        TraceText text = new TraceText(summary, columns);
        text.head(file);
        text.channels();
        text.out.append('\n').append(TracePlot.of(series, summary.work(), summary.phases(), columns));
        text.phases();
        text.sustained();
        text.findings();
        text.remarks();
        return text.out.toString();
    }

    private void head(String file) {
        out.append(Wrap.at(columns, Harmless.line(file) + ": " + summary.rows() + " rows, one every " + seconds(summary.samplingSeconds())
                + (summary.gaps() == 0 ? ", no gaps" : ", " + Counted.of(summary.gaps(), "gap"))
                + "; " + seconds(summary.work().lengthSeconds()) + " of work"
                + (summary.work().toldBy() == Channel.TIME ? "" : ", told by " + summary.work().toldBy().label())));
    }

    private void channels() {
        out.append('\n');
        TextTable table = new TextTable("channel", "column", "unit", "known");
        int room = Math.max(12, columns - 48);
        for (MappedColumn column : summary.map().all()) {
            String name = Harmless.line(column.name());
            table.row(column.channel().label(), name.length() > room ? name.substring(0, room - 1) + "…" : name, column.unit().symbol(), column.origin().label());
        }
        out.append(table.text("  "));
        out.append(Wrap.at(columns, "Wrong? Set it: --map power=COLUMN (channels: " + String.join(", ", Channel.shortWords()) + ")"));
    }

    private void phases() {
        out.append('\n');
        TextTable table = new TextTable("phase", ">from s", ">to s", ">W", ">MHz", ">die °C", ">rpm");
        for (Phase phase : summary.phases()) {
            table.row(phase.kind().label(), Figures.fixed(phase.fromSeconds(), 1), Figures.fixed(phase.toSeconds(), 1), mean(phase, summary.powerChannel(), 2),
                    mean(phase, Channel.CLOCK, 0), mean(phase, Channel.DIE_TEMPERATURE, 1), mean(phase, Channel.FAN, 0));
        }
        out.append(table.text("  "));
    }

    private static String mean(Phase phase, Channel channel, int decimals) {
        return Figures.fixed(phase.means().getOrDefault(channel, Double.NaN), decimals);
    }

    private void sustained() {
        out.append("\nSustained (last half of the work)\n");
        TextTable table = new TextTable("channel", ">mean", "unit", ">95 % ±", ">per min", ">wander");
        for (Map.Entry<Channel, Level> entry : summary.sustained().entrySet()) {
            if (entry.getKey() != Channel.TIME) {
                Level level = entry.getValue();
                int decimals = Math.abs(level.mean()) >= 1000 ? 0 : Math.abs(level.mean()) >= 10 ? 1 : 2;
                table.row(entry.getKey().label(), Figures.fixed(level.mean(), decimals), TracePlot.unit(entry.getKey()),
                        Figures.fixed(NINETY_FIVE * level.standardError(), decimals + 1), Figures.fixed(level.trendPerMinute(), decimals + 1),
                        Figures.fixed(level.wander(), decimals + 1));
            }
        }
        out.append(table.text("  "));
    }

    private void findings() {
        out.append('\n');
        line("boost", boost());
        line("power changes", summary.changes().isEmpty() ? "none" : "at " + String.join(", ", summary.changes().stream().map(TraceText::seconds).toList()));
        line("settled after", Double.isNaN(summary.settleSeconds()) ? "never" : seconds(summary.settleSeconds()));
        TraceSummary.Thermal thermal = summary.thermal();
        line("time constant", Double.isNaN(thermal.timeConstantSeconds()) ? "not shown by this trace"
                : seconds(thermal.timeConstantSeconds()) + ", heading for " + Figures.fixed(thermal.asymptoteCelsius(), 1) + " °C");
        line("thermal res.", Double.isNaN(thermal.kelvinsPerWatt()) ? "needs die temperature, package power and air (--ambient 21C)"
                : Figures.fixed(thermal.kelvinsPerWatt(), 3) + " K/W, die to air at " + Figures.fixed(thermal.airCelsius(), 1)
                        + " °C; of this machine at this fan speed");
        line("energy", Double.isNaN(summary.energyWattHours()) ? "needs power" : Figures.fixed(summary.energyWattHours(), 3) + " Wh of "
                + summary.powerChannel().label());
        line("steady", summary.isSteady() ? "yes: nothing moved between the third and the last quarter" : "no: " + String.join("; ", summary.unsteady()));
    }

    private String boost() {
        double seconds = summary.boost().seconds();
        if (Double.isNaN(seconds)) {
            return "needs power and at least 12 s of work";
        }
        return seconds == 0 ? "none: power begins near its sustained level" : seconds(seconds) + " at " + Figures.fixed(summary.boost().watts(), 1) + " W";
    }

    private void remarks() {
        List<TraceRemark> remarks = summary.remarks();
        if (remarks.isEmpty()) {
            return;
        }
        out.append("\nRemarks\n");
        for (TraceRemark remark : remarks.subList(0, Math.min(MOST_REMARKS, remarks.size()))) {
            Wrap.point((remark.line() > 0 ? "line " + remark.line() + ": " : "") + Harmless.line(remark.text()), columns, out);
        }
        if (remarks.size() > MOST_REMARKS) {
            out.append("  and ").append(remarks.size() - MOST_REMARKS).append(" more (all with --json)\n");
        }
    }

    private void line(String label, String text) {
        Wrap.labelled(label, LABEL_COLUMNS, text, columns, out);
    }

    private static String seconds(double seconds) {
        return Figures.fixed(seconds, seconds < 1 ? 2 : 1).replaceFirst("\\.0$", "") + " s";
    }
}
