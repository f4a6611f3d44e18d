package coldproof.report.text;

import coldproof.quantity.Interval;
import coldproof.quantity.LogRatio;
import coldproof.reason.ledger.Ledger;
import coldproof.reason.ledger.LedgerDevice;
import coldproof.reason.ledger.LedgerFigure;
import coldproof.reason.ledger.LedgerRow;
import coldproof.reason.ledger.LedgerTable;
import coldproof.reason.ledger.Restraint;
import coldproof.reason.ledger.Standing;
import coldproof.reason.ledger.Told;

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
            Wrap.indented(heading(ledger, table), "", columns, out);
            out.append(table(table));
            if (table.kind() == LedgerTable.Kind.SPEED) {
                out.append(LedgerPlot.of(table, columns));
            }
        }
        inWords(ledger, columns, out);
        restraints(ledger, columns, out);
        notes(ledger, columns, out);
        sources(ledger, columns, out);
        return out.toString();
    }

    private static String heading(Ledger ledger, LedgerTable table) {
        String what = table.workload().map(workload -> Harmless.line(workload.name()) + (table.kind() != LedgerTable.Kind.SPEED || workload.unit().isEmpty() ? ""
                : ", " + Harmless.line(workload.unit())) + (table.kind() == LedgerTable.Kind.SPEED ? " (" + workload.better().word() + " is better)" : ""))
                .orElse("All workloads (geometric mean of the ratios)");
        return switch (table.kind()) {
            case SPEED -> what;
            case PER_WATT -> what + ", speed per watt";
            case PER_MONEY -> what + ", speed for the money (" + Harmless.line(ledger.sheet().currency()) + ")";
        };
    }

    private static String table(LedgerTable table) {
        boolean values = table.kind() == LedgerTable.Kind.SPEED && table.workload().isPresent();
        TextTable text = values ? new TextTable("device", ">value", ">u", ">against ref.", "", ">interval", ">rank") : new TextTable("device", ">against ref.", "", ">interval", ">rank");
        for (LedgerRow row : table.rows()) {
            Standing standing = row.standing();
            String against = standing.told() == Told.REFERENCE ? "reference" : Figures.change(standing.percentAgainstReference());
            String mark = standing.told() == Told.CANNOT_TELL ? "~" : standing.told() == Told.NOT_STATED ? "?" : "";
            String interval = standing.interval().map(LedgerText::interval).orElse("");
            if (values) {
                LedgerFigure figure = row.figure().orElseThrow();
                text.row(name(row.device()), Figures.score(figure.value()), figure.isStated() ? Figures.percent(figure.uncertaintyPercent().getAsDouble()) : "?", against,
                        mark, interval, rank(row));
            } else {
                text.row(name(row.device()), against, mark, interval, rank(row));
            }
        }
        return text.text("  ");
    }

    static String name(String device) {
        String harmless = Harmless.line(device);
        return harmless.length() <= LONGEST_NAME ? harmless : harmless.substring(0, LONGEST_NAME - 2) + "..";
    }

    private static String interval(Interval interval) {
        return Figures.change(LogRatio.toPercent(interval.low())) + " to " + Figures.change(LogRatio.toPercent(interval.high()));
    }

    private static String rank(LedgerRow row) {
        int best = row.bestRank().orElse(0);
        int worst = row.worstRank().orElse(0);
        return best == worst ? Integer.toString(best) : best + "-" + worst;
    }

    /** Both directions once, because "25 % faster" and "20 % slower" are the same finding; of all workloads, or of the only one. */
    private static void inWords(Ledger ledger, int columns, StringBuilder out) {
        LedgerTable headline = ledger.tables().stream().filter(table -> table.kind() == LedgerTable.Kind.SPEED).reduce((first, last) -> last).orElse(null);
        if (headline == null) {
            return;
        }
        out.append("\nIn words, ").append(headline.workload().map(workload -> Harmless.line(workload.name())).orElse("over all workloads")).append('\n');
        String reference = Harmless.line(ledger.sheet().reference());
        for (LedgerRow row : headline.rows()) {
            String device = Harmless.line(row.device());
            Standing standing = row.standing();
            String one = Figures.percent(Math.abs(standing.percentAgainstReference()));
            String other = Figures.percent(Math.abs(standing.percentOfReferenceAgainstIt()));
            String words = switch (standing.told()) {
                case FASTER -> device + " is " + one + " faster than " + reference + ", which is " + other + " slower than it.";
                case SLOWER -> device + " is " + one + " slower than " + reference + ", which is " + other + " faster than it.";
                case CANNOT_TELL -> device + " cannot be told from " + reference + ".";
                case NOT_STATED -> device + ": not known, a source does not say how sure it is.";
                case REFERENCE -> "";
            };
            if (!words.isEmpty()) {
                Wrap.indented(words, "  ", columns, out);
            }
        }
    }

    private static void restraints(Ledger ledger, int columns, StringBuilder out) {
        if (!ledger.restraints().isEmpty()) {
            out.append("\nSame silicon, held back and free\n");
        }
        for (Restraint restraint : ledger.restraints()) {
            Standing standing = restraint.standing();
            String range = standing.interval().map(interval -> " (" + Figures.share(Math.exp(interval.low())) + " to " + Figures.share(Math.exp(interval.high())) + ")").orElse("");
            String verdict = switch (standing.told()) {
                case SLOWER, FASTER -> " That is " + Figures.change(standing.percentAgainstReference()) + " against the free one; the free one is "
                        + Figures.change(standing.percentOfReferenceAgainstIt()) + " against it.";
                case CANNOT_TELL -> " The two cannot be told apart.";
                case NOT_STATED -> " How sure that is, a source does not say.";
                case REFERENCE -> "";
            };
            Wrap.indented(Harmless.line(restraint.constrained() + " (" + restraint.constraint() + ") reaches ") + Figures.share(Math.exp(standing.logSpeedRatio())) + range
                    + " of " + Harmless.line(restraint.unconstrained() + ", both " + restraint.silicon()) + ", over " + restraint.workloads() + " workload"
                    + (restraint.workloads() == 1 ? "" : "s") + "." + verdict, "  ", columns, out);
        }
    }

    private static void notes(Ledger ledger, int columns, StringBuilder out) {
        out.append('\n');
        Wrap.indented("~ cannot be told from noise. ? the source does not say how sure it is. u: standard uncertainty of the value, percent of it. rank: the ranks the data "
                + "allow; all of a table hold together with " + Figures.given(100 * ledger.sheet().level()) + ".", "", columns, out);
        ledger.warnings().forEach(warning -> Wrap.indented("look: " + Harmless.line(warning), "", columns, out));
    }

    private static void sources(Ledger ledger, int columns, StringBuilder out) {
        out.append("\nSources\n");
        for (LedgerDevice device : ledger.sheet().devices()) {
            device.figures().forEach((workload, figure) -> Wrap.indented(Harmless.line(device.name() + ", " + workload + ": " + figure.source())
                    + (figure.date().isEmpty() ? "" : ", " + Harmless.line(figure.date()))
                    + (figure.repeats().isEmpty() ? "" : ", " + figure.repeats().getAsInt() + (figure.repeats().getAsInt() == 1 ? " result" : " results")), "  ", columns, out));
        }
    }
}
