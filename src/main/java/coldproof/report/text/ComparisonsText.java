package coldproof.report.text;

import coldproof.quantity.Interval;
import coldproof.quantity.LogRatio;
import coldproof.reason.verdict.Compared;
import coldproof.reason.verdict.Comparisons;
import coldproof.reason.verdict.Verdict;
import java.util.Arrays;
import java.util.List;

/** Several changes judged together as a person reads them: a table of all, then each with what it rests on. */
public final class ComparisonsText {
    private ComparisonsText() {}

    /** The whole answer for a screen of so many columns; one change alone reads as it always does. */
    public static String of(List<Compared> compared, List<String> deviations, int columns) {
        Compared first = compared.get(0);
        if (compared.size() == 1) {
            return one(first, deviations, columns);
        }
        StringBuilder out = new StringBuilder();
        out.append(Comparisons.deciding(compared).verdict().decision().words()).append("   ").append(compared.size()).append(" changes of ")
                .append(Harmless.line(first.question().factor())).append(" against ").append(Harmless.line(first.question().baseline())).append("\n\n");
        TextTable table = new TextTable("change", ">estimate", ">from", ">to", ">adjusted p", "verdict");
        compared.forEach(one -> table.row(Arrays.stream(cells(one)).map(Harmless::line).toArray(String[]::new)));
        out.append(table.text("  ")).append('\n');
        out.append(Wrap.at(columns, "The intervals and adjusted p values hold for all " + compared.size() + " changes at once (" + first.adjustment()
                + "). The study passes when every change does."));
        for (int i = 0; i < compared.size(); i++) {
            Compared one = compared.get(i);
            boolean last = i == compared.size() - 1;
            out.append('\n').append(Harmless.line(one.question().against())).append(": ")
                    .append(one(one, last ? deviations : List.of(), columns));
        }
        return out.toString();
    }

    private static String one(Compared one, List<String> deviations, int columns) {
        String looks = one.looks().map(report -> "\n" + LooksText.of(report, columns)).orElse("");
        return VerdictText.of(one.question(), one.verdict(), List.of(), columns) + looks + VerdictText.deviations(deviations, columns);
    }

    /** The line of a change in the table of all: change, estimate, interval from and to, adjusted p, verdict. */
    public static String[] cells(Compared one) {
        Verdict verdict = one.verdict();
        String estimate = verdict.estimate().map(change -> Figures.change(LogRatio.toPercent(change.log()))).orElse("-");
        String low = verdict.interval().map(Interval::logToPercent).map(interval -> Figures.change(interval.low())).orElse("-");
        String high = verdict.interval().map(Interval::logToPercent).map(interval -> Figures.change(interval.high())).orElse("-");
        String adjusted = one.adjustedP().isPresent() ? Figures.probability(one.adjustedP().getAsDouble()) : "-";
        return new String[] {one.question().against(), estimate, low, high, adjusted, verdict.word().words()};
    }
}
