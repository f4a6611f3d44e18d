package coldproof.report.text;

import coldproof.plan.Claim;
import coldproof.plan.Plan;
import coldproof.quantity.LogRatio;
import coldproof.reason.looks.LookCost;
import coldproof.reason.rehearse.Counts;
import coldproof.reason.rehearse.RehearsalReport;
import coldproof.reason.rehearse.RehearsalReport.Outcome;
import coldproof.reason.rehearse.RehearsalReport.PlanChange;
import coldproof.reason.rehearse.Spent;
import coldproof.reason.rehearse.Story;
import coldproof.reason.sizing.Size;
import coldproof.reason.sizing.Warning;
import coldproof.reason.verdict.Decision;
import java.util.ArrayList;
import java.util.List;

/** A rehearsal for people. */
public final class RehearsalText {
    private RehearsalText() {}

    /** One part for each changed level. */
    public static String of(List<RehearsalReport> reports, int columns) {
        StringBuilder out = new StringBuilder();
        for (RehearsalReport report : reports) {
            out.append(out.isEmpty() ? "" : "\n");
            head(report, columns, out);
            stories(report, out);
            weaknesses(report, columns, out);
            changes(report, columns, out);
        }
        out.append('\n').append(Wrap.at(columns, "How often the limiter would be named: coldproof rehearse --limiters"));
        return out.toString();
    }

    private static void head(RehearsalReport report, int columns, StringBuilder out) {
        Plan plan = report.plan();
        out.append(Wrap.at(columns, Harmless.line("SIMULATED: " + report.settings().studies() + " studies for each story (seed " + report.settings().seed()
                + "), " + plan.compare().factor() + " " + report.against() + " against " + plan.compare().baseline() + ", claim " + plan.claim().word()
                + ", a change of " + Figures.given(plan.mattersPercent()) + " matters.")));
        plan.noise().ifPresent(noise -> out.append(Wrap.at(columns, Harmless.line("Noise run to run " + Figures.given(noise.runCvPercent())
                + ", session to session " + Figures.given(noise.sessionCvPercent()) + ", from: " + noise.from() + "."))));
        String time = PlanText.time(report.size().minutes().total(), report.size().minutes().outdoors());
        String trials = report.size().size().map(size -> size.trialsTotal() + " trials").orElse("");
        out.append(Wrap.at(columns, PlanText.layout(plan.layout()) + ": " + trials + "."));
        out.append(time.isEmpty() ? "" : time + "\n");
        out.append('\n');
    }

    private static void stories(RehearsalReport report, StringBuilder out) {
        boolean looks = looksEarly(report);
        List<String> heads = new ArrayList<>(List.of("story", ">truth", ">PASS", ">FAIL", ">UNDECIDED", ">wrong"));
        if (looks) {
            heads.add(isOutdoors(report) ? ">outdoors" : ">trials");
        }
        TextTable table = new TextTable(heads.toArray(String[]::new));
        for (Outcome outcome : report.stories()) {
            Counts counts = outcome.counts();
            List<String> cells = new ArrayList<>(List.of(outcome.story().name(), outcome.story().trueLog() == 0 ? "0 %" : Figures.change(LogRatio.toPercent(outcome.story().trueLog())),
                    share(counts.share(Decision.PASS)), share(counts.share(Decision.FAIL)), share(counts.share(Decision.UNDECIDED)),
                    share(counts.wrongShare())));
            if (looks) {
                cells.add(isOutdoors(report) ? Math.round(outcome.spent().outdoorMinutes()) + " min" : Figures.fixed(outcome.spent().trials(), 1));
            }
            table.row(cells.toArray(String[]::new));
        }
        out.append(table.text("  ")).append('\n');
        decides(report, out);
        report.size().size().ifPresent(size -> out.append("  smallest possible p    ").append(Figures.probability(size.smallestRandomisationP()))
                .append(" by randomisation alone\n"));
    }

    /** For a gain the calculation is of seeing a change; PASS asks besides that it may be as large as what matters. */
    private static void decides(RehearsalReport report, StringBuilder out) {
        Counts counts = report.of(deciding(report));
        double seen = report.plan().claim() == Claim.GAIN ? counts.changeSeen() : counts.samenessShown();
        String what = report.plan().claim() == Claim.GAIN ? "the change is seen     " : "sameness is shown      ";
        report.size().size().ifPresent(size -> out.append("  ").append(what).append(Figures.share(seen)).append(" +- ").append(Figures.share(counts.error(seen)))
                .append("; by calculation ").append(exact(report)).append('\n'));
    }

    private static boolean looksEarly(RehearsalReport report) {
        return report.size().looks().isPresent();
    }

    private static boolean isOutdoors(RehearsalReport report) {
        return report.size().minutes().outdoors().orElse(0) > 0;
    }

    /** With looks the calculation is by normal theory, a little kinder than the truth of a small study. */
    private static String exact(RehearsalReport report) {
        double power = report.size().looks().map(LookCost::power).or(() -> report.size().size().map(Size::power)).orElse(Double.NaN);
        return Double.isNaN(power) ? "-" : Figures.share(power);
    }

    private static Story.Kind deciding(RehearsalReport report) {
        return report.plan().claim() == Claim.GAIN ? Story.Kind.MATTERS : Story.Kind.NO_CHANGE;
    }

    private static void weaknesses(RehearsalReport report, int columns, StringBuilder out) {
        for (Warning weakness : report.weaknesses()) {
            Wrap.hanging("  look: ", Harmless.line(weakness.text()), columns, out);
        }
    }

    private static void changes(RehearsalReport report, int columns, StringBuilder out) {
        if (report.changes().isEmpty()) {
            return;
        }
        boolean enough = report.size().size().map(size -> size.power() >= report.size().wantedPower()).orElse(false);
        String meaning = report.plan().claim() == Claim.GAIN ? " (PASS when the gain matters, wrong when there is none)" : "";
        out.append('\n').append(Wrap.at(columns, (enough ? "What could be spared and still reach " + Figures.share(report.size().wantedPower())
                : "What would help most") + ", rehearsed" + meaning + ":"));
        TextTable table = new TextTable("change of the plan", ">PASS", ">wrong", ">in all", ">outdoors");
        row(table, "as planned", report.of(Story.Kind.NO_CHANGE), report.of(deciding(report)), report.outcome(deciding(report)).spent());
        for (PlanChange change : report.changes()) {
            row(table, Harmless.line(change.what()), change.noChange(), report.plan().claim() == Claim.GAIN ? change.matters() : change.noChange(),
                    change.spent());
        }
        out.append(table.text("  "));
    }

    /** Times are means, early ends counted in. */
    private static void row(TextTable table, String what, Counts none, Counts deciding, Spent spent) {
        table.row(what, share(deciding.share(Decision.PASS)), share(none.wrongShare()),
                Double.isNaN(spent.minutes()) ? Figures.fixed(spent.trials(), 0) + " trials" : Figures.minutes(spent.minutes()), Figures.minutes(spent.outdoorMinutes()));
    }

    private static String share(double share) {
        return Figures.share(share);
    }
}
