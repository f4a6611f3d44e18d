package coldproof.report.text;

import coldproof.quantity.Interval;
import coldproof.quantity.LogRatio;
import coldproof.reason.looks.LookCost;
import coldproof.reason.verdict.LookReport;
import coldproof.study.LookTaken;
import coldproof.study.Numbered;

/** Looks before the end of a study, for people. */
public final class LooksText {
    private LooksText() {}

    /** What looking did to a verdict. */
    static String of(LookReport report, int columns) {
        StringBuilder out = new StringBuilder(Wrap.at(columns, "Looks: " + report.taken().size() + " of " + report.planned() + " taken"
                + (report.taken().isEmpty() ? "." : "; each is held against its own bound, so that all together keep the false alarm.")));
        if (!report.taken().isEmpty()) {
            TextTable table = new TextTable(">look", ">" + report.unitWord() + "s", ">information", ">t", ">bound", ">p needed", ">spent", "says");
            report.taken().forEach(look -> table.row(cells(look)));
            out.append(table.text("  "));
        }
        String words = words(report);
        if (!words.isEmpty()) {
            Wrap.indented(words, "  ", columns, out);
        }
        return out.toString();
    }

    /** The line of a look: number, units, information, t, bound, p needed, spent, what the data said. */
    public static String[] cells(LookReport.Look look) {
        return new String[] {Integer.toString(look.number()), Integer.toString(look.units()), Figures.share(look.fraction()), Figures.fixed(look.t(), 2),
            Figures.fixed(look.bound(), 2), Figures.probability(look.nominalP()), Figures.probability(look.spent()), look.word().words()};
    }

    /** An interim look as the journal holds it. */
    public static String recorded(Numbered<LookTaken> look) {
        LookTaken taken = look.event();
        return "Look " + taken.look() + " was taken before the end: entry " + look.sequence() + " of the journal, t " + Figures.fixed(taken.statistic(), 2)
                + " held against " + Figures.fixed(taken.bound(), 2) + ", " + Harmless.line(taken.decision()) + ".";
    }

    /** What follows from the looks, in sentences; may be empty. */
    public static String words(LookReport report) {
        StringBuilder words = new StringBuilder();
        boolean several = report.adjusted().filter(adjusted -> adjusted.changes() > 1).isPresent();
        report.decidedAt().ifPresent(look -> words.append(several ? "This change was decided at look " : "The study could stop at look ")
                .append(look.number()).append(". "));
        report.adjusted().ifPresent(adjusted -> words.append("Allowing for the looks").append(several ? " and for " + adjusted.changes() + " changes judged together" : "")
                .append(" the change is ").append(adjusted(adjusted)).append(". "));
        report.chance().ifPresent(chance -> words.append("If the change is just what matters, going on shows a gain with a chance of ")
                .append(Figures.share(chance)).append(report.isFutile() ? ": hardly worth it, though going on costs no false alarms. " : ". "));
        return words.append(report.next()).toString().strip();
    }

    private static String adjusted(LookReport.Adjusted adjusted) {
        Interval percent = adjusted.interval().logToPercent();
        return Figures.change(LogRatio.toPercent(adjusted.log())) + " (" + Figures.given(100 * percent.level()) + " interval " + Figures.change(percent.low())
                + " to " + Figures.change(percent.high()) + ", " + Figures.pValue(adjusted.p()) + ")";
    }

    /** What looks cost and save, when planning. */
    static String of(LookCost cost, int columns) {
        StringBuilder out = new StringBuilder("Looks:\n");
        TextTable table = new TextTable(">look", ">after " + cost.unitWord(), ">information", ">p needed", ">spent");
        cost.looks().forEach(bound -> table.row(Integer.toString(bound.point().number()), Integer.toString(bound.point().units()),
                Figures.share(bound.point().fraction()), Figures.probability(bound.nominalP()), Figures.probability(bound.spent())));
        out.append(table.text("  "));
        String power = Double.isNaN(cost.power()) ? "" : " With these looks the power is " + Figures.share(cost.power()) + ".";
        String ifChange = Double.isNaN(cost.expectedUnitsIfChange()) ? "" : ", " + Figures.fixed(cost.expectedUnitsIfChange(), 1) + " if it is there";
        Wrap.indented("For the same power looking takes at most " + Figures.fixed(cost.inflation(), 3) + " times as many " + cost.unitWord() + "s." + power
                + " On average " + Figures.fixed(cost.expectedUnitsIfNone(), 1) + " " + cost.unitWord() + "s are run if there is no change" + ifChange + ".",
                "  ", columns, out);
        return out.toString();
    }
}
