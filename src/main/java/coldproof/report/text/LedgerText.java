package coldproof.report.text;

import coldproof.reason.ledger.Ledger;
import coldproof.reason.ledger.LedgerFigure;
import coldproof.reason.ledger.LedgerRow;
import coldproof.reason.ledger.LedgerTable;
import coldproof.reason.ledger.Standing;
import coldproof.reason.ledger.Told;
import java.util.List;

/** The ledger for people: a table and a plot for each comparison, and in words what the numbers say. */
public final class LedgerText {
    private static final int LONGEST_NAME = 22;

    private LedgerText() {}

    /** The ledger. */
    public static String of(Ledger ledger, int columns) {
        StringBuilder out = new StringBuilder();
        Wrap.indented(Harmless.line(ledger.sheet().title()), "", columns, out);
        if (ledger.sheet().simulated()) {
            out.append("SIMULATED: the figures are invented.\n");
        }
        Wrap.indented("Against " + Harmless.line(ledger.sheet().reference()) + ", with " + Figures.given(100 * ledger.sheet().level()) + " intervals. Percent are of "
                + Harmless.line(ledger.sheet().reference()) + "'s speed; + is faster.", "", columns, out);
        for (LedgerTable table : ledger.tables()) {
            out.append('\n');
            Wrap.indented(Harmless.line(LedgerWords.heading(ledger, table)), "", columns, out);
            out.append(table(table));
            if (table.kind() == LedgerTable.Kind.SPEED) {
                out.append(LedgerPlot.of(table, columns));
            }
        }
        lines(LedgerWords.headline(ledger), LedgerWords.standings(ledger), columns, out);
        lines("Same silicon, held back and free", LedgerWords.restraints(ledger), columns, out);
        out.append('\n');
        Wrap.indented(LedgerWords.signs(ledger), "", columns, out);
        ledger.warnings().forEach(warning -> Wrap.hanging("look: ", Harmless.line(warning), columns, out));
        lines("Sources", LedgerWords.sources(ledger), columns, out);
        return out.toString();
    }

    private static void lines(String heading, List<String> lines, int columns, StringBuilder out) {
        if (!lines.isEmpty()) {
            out.append('\n').append(Harmless.line(heading)).append('\n');
            lines.forEach(line -> Wrap.indented(Harmless.line(line), "  ", columns, out));
        }
    }

    private static String table(LedgerTable table) {
        boolean values = table.kind() == LedgerTable.Kind.SPEED && table.workload().isPresent();
        TextTable text = values ? new TextTable("device", ">value", ">u", ">against ref.", "", ">interval", ">rank") : new TextTable("device", ">against ref.", "", ">interval", ">rank");
        for (LedgerRow row : table.rows()) {
            Standing standing = row.standing();
            String against = standing.told() == Told.REFERENCE ? "reference" : Figures.change(standing.percentAgainstReference());
            String mark = LedgerWords.sign(standing);
            String interval = standing.interval().map(LedgerWords::interval).orElse("");
            if (values) {
                LedgerFigure figure = row.figure().orElseThrow();
                text.row(name(row.device()), Figures.score(figure.value()), figure.isStated() ? Figures.percent(figure.uncertaintyPercent().getAsDouble()) : "?", against,
                        mark, interval, LedgerWords.rank(row));
            } else {
                text.row(name(row.device()), against, mark, interval, LedgerWords.rank(row));
            }
        }
        return text.text("  ");
    }

    static String name(String device) {
        String harmless = Harmless.line(device);
        return harmless.length() <= LONGEST_NAME ? harmless : harmless.substring(0, LONGEST_NAME - 2) + "..";
    }
}
