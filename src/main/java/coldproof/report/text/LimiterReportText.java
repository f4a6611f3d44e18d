package coldproof.report.text;

import coldproof.reason.limiter.Limiter;
import coldproof.reason.rehearse.LimiterReport;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** How well limiters are named, for people: truth by answer. */
public final class LimiterReportText {
    private static final int SHOWN = 5;

    private LimiterReportText() {}

    /** The table of confusion, and the wrong answers. */
    public static String of(LimiterReport report, int columns) {
        StringBuilder out = new StringBuilder();
        out.append(Wrap.at(columns, "SIMULATED: the plan run with full telemetry in " + report.studies() + " studies on invented devices, each drawn anew; what "
                + "truly held the device against what was named, condition by condition."));
        out.append('\n').append(table(report));
        out.append(Wrap.at(columns, report.wrong().size() + " of " + report.conditions() + " named wrongly (" + Figures.share(report.wrongShare()) + "), "
                + report.unclear() + " left open. Where two held in turn, naming one that held a fifth of the time or more is not wrong ("
                + report.rightWhereMixed() + ")."));
        report.wrong().stream().limit(SHOWN).forEach(one -> Wrap.hanging("  wrong: ", Harmless.line(one), columns, out));
        return out.toString();
    }

    /** Truth by answer. */
    public static String table(LimiterReport report) {
        List<String> heads = new ArrayList<>(List.of("truth"));
        for (Limiter named : Limiter.values()) {
            heads.add(">" + named.word());
        }
        TextTable table = new TextTable(heads.toArray(String[]::new));
        for (Map.Entry<Limiter, Map<Limiter, Integer>> row : report.rows().entrySet()) {
            List<String> cells = new ArrayList<>(List.of(row.getKey().word()));
            for (Limiter named : Limiter.values()) {
                cells.add(Integer.toString(row.getValue().getOrDefault(named, 0)));
            }
            table.row(cells.toArray(String[]::new));
        }
        return table.text("  ");
    }
}
