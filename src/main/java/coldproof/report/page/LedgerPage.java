package coldproof.report.page;

import coldproof.quantity.Interval;
import coldproof.quantity.LogRatio;
import coldproof.reason.ledger.Ledger;
import coldproof.reason.ledger.LedgerRow;
import coldproof.reason.ledger.LedgerTable;
import coldproof.reason.ledger.Standing;
import coldproof.reason.ledger.Told;
import coldproof.report.plot.Axis;
import coldproof.report.plot.Ink;
import coldproof.report.plot.Mark;
import coldproof.report.plot.Plot;
import coldproof.report.plot.Shape;
import coldproof.report.text.Figures;
import coldproof.report.text.LedgerWords;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** A ledger as a page: what it says in words, then a plot and a table for each comparison. */
public final class LedgerPage {
    private static final int ABOVE_AND_BELOW = 70;
    private static final int EACH = 26;
    private static final int LONGEST_LABEL = 20;
    private static final int MOST_LABELS = 60;
    /** Percent at which the axis may be labelled: near enough for the eye, few enough to read. */
    private static final double[] LABELLED = {-95, -90, -80, -65, -50, -35, -20, -10, -5, 0, 5, 10, 20, 35, 50, 75, 100, 150, 200, 300, 500, 1000, 3000, 10_000};
    private final Ledger ledger;

    private LedgerPage(Ledger ledger) {
        this.ledger = ledger;
    }

    /** The page of a ledger. */
    public static Page of(Ledger ledger) {
        return new LedgerPage(ledger).page();
    }

    private Page page() {
        List<Section> sections = new ArrayList<>();
        List<Block> first = new ArrayList<>();
        if (ledger.sheet().simulated()) {
            first.add(new Block.Notice("SIMULATED", "The figures are invented."));
        }
        first.add(new Block.Points(LedgerWords.standings(ledger)));
        if (!ledger.restraints().isEmpty()) {
            first.add(new Block.Prose("Same silicon, held back and free:"));
            first.add(new Block.Points(LedgerWords.restraints(ledger)));
        }
        sections.add(new Section("answer", LedgerWords.headline(ledger), first));
        for (int i = 0; i < ledger.tables().size(); i++) {
            LedgerTable table = ledger.tables().get(i);
            sections.add(new Section("comparison-" + (i + 1), LedgerWords.heading(ledger, table), List.of(new Block.Drawing(plot(table)), grid(table))));
        }
        List<Block> method = new ArrayList<>(List.of(new Block.Prose(LedgerWords.signs(ledger)), new Block.Prose("Every comparison is of logarithms of speeds; "
                + "uncertainties are propagated to first order with effective degrees of freedom (JCGM 100:2008); several workloads are averaged by the geometric mean "
                + "of their ratios; ranks rest on all pairs at a level divided by their number.")));
        if (!ledger.warnings().isEmpty()) {
            method.add(new Block.Points(ledger.warnings()));
        }
        sections.add(new Section("method", "How to read it", method));
        sections.add(new Section("sources", "Sources", List.of(new Block.Points(LedgerWords.sources(ledger)))));
        return new Page(ledger.sheet().title(), "Against " + ledger.sheet().reference() + ", with " + Figures.given(100 * ledger.sheet().level()) + " intervals", sections);
    }

    private Block grid(LedgerTable table) {
        boolean values = table.kind() == LedgerTable.Kind.SPEED && table.workload().isPresent();
        List<Block.Column> columns = new ArrayList<>(List.of(Block.Column.words("device")));
        if (values) {
            columns.add(Block.Column.numbers("value"));
            columns.add(Block.Column.numbers("u"));
        }
        columns.addAll(List.of(Block.Column.numbers("against the reference"), Block.Column.words(""), Block.Column.numbers("interval"),
                Block.Column.numbers("the reference against it"), Block.Column.numbers("rank")));
        List<List<String>> rows = new ArrayList<>();
        for (LedgerRow row : table.rows()) {
            rows.add(cells(row, values));
        }
        return new Block.Grid("Speed against " + ledger.sheet().reference() + "; + is faster", columns, rows);
    }

    private static List<String> cells(LedgerRow row, boolean values) {
        Standing standing = row.standing();
        boolean reference = standing.told() == Told.REFERENCE;
        List<String> cells = new ArrayList<>(List.of(row.device()));
        if (values) {
            cells.add(Figures.score(row.figure().orElseThrow().value()));
            cells.add(row.figure().orElseThrow().isStated() ? Figures.percent(row.figure().orElseThrow().uncertaintyPercent().getAsDouble()) : "?");
        }
        cells.add(reference ? "reference" : Figures.change(standing.percentAgainstReference()));
        cells.add(LedgerWords.sign(standing));
        cells.add(standing.interval().map(LedgerWords::interval).orElse(""));
        cells.add(reference ? "" : Figures.change(standing.percentOfReferenceAgainstIt()));
        cells.add(LedgerWords.rank(row));
        return cells;
    }

    private Plot plot(LedgerTable table) {
        List<Mark> marks = new ArrayList<>(List.of(new Mark.Rule(Mark.Along.X, 0, Ink.GREY, Mark.Stroke.PLAIN)));
        List<String> names = new ArrayList<>();
        StringBuilder description = new StringBuilder();
        double low = -0.03; // of a logarithm, so that equal devices still have a scale
        double high = 0.03;
        for (LedgerRow row : table.rows()) {
            names.add(0, shortened(row.device()));
            Standing standing = row.standing();
            double at = table.rows().size() + 1.0 - names.size();
            double middle = standing.logSpeedRatio();
            double from = standing.interval().map(Interval::low).orElse(middle);
            double to = standing.interval().map(Interval::high).orElse(middle);
            if (standing.interval().isPresent()) {
                marks.add(new Mark.Reach(at, from, middle, to, Mark.Along.X, Ink.DEEP_BLUE, Mark.Weight.FINE));
            } else {
                marks.add(new Mark.Points(List.of(new Mark.Place(middle, at)), Ink.GREY, Shape.DISC));
            }
            low = Math.min(low, from);
            high = Math.max(high, to);
            description.append(row.device()).append(": ").append(Figures.change(standing.percentAgainstReference()))
                    .append(standing.interval().map(interval -> ", interval " + LedgerWords.interval(interval)).orElse("")).append(". ");
        }
        double room = 0.06 * (high - low);
        return new Plot("Speed against " + ledger.sheet().reference(), description.toString().strip(), axis(low - room, high + room), Axis.places("", names, MOST_LABELS),
                marks, List.of(Plot.Key.of(Plot.Sign.REACH, Ink.DEEP_BLUE, "ratio with its " + Figures.given(100 * ledger.sheet().level()) + " interval"),
                        Plot.Key.point(Ink.GREY, Shape.DISC, "reference, or not stated how sure")), ABOVE_AND_BELOW + EACH * table.rows().size());
    }

    private static String shortened(String name) {
        return name.codePointCount(0, name.length()) <= LONGEST_LABEL ? name : name.substring(0, name.offsetByCodePoints(0, LONGEST_LABEL - 1)) + "\u2026";
    }

    /** Ratios as percent on a logarithmic scale, so that twice and half as fast lie equally far from the reference. */
    private static Axis axis(double low, double high) {
        List<Axis.Mark> marks = new ArrayList<>(List.of(new Axis.Mark(0, "0 %")));
        double apart = (high - low) / 6;
        for (double percent : LABELLED) {
            double log = LogRatio.ofPercent(percent).log();
            if (log > low && log < high && marks.stream().allMatch(mark -> Math.abs(mark.value() - log) >= apart)) {
                marks.add(new Axis.Mark(log, (percent > 0 ? "+" : "") + Figures.given(percent)));
            }
        }
        marks.sort(Comparator.comparingDouble(Axis.Mark::value));
        return new Axis("against the reference", low, high, marks);
    }
}
