package coldproof.report.export;

import coldproof.quantity.Interval;
import coldproof.quantity.LogRatio;
import coldproof.reason.verdict.Compared;
import coldproof.reason.verdict.Randomisation;
import coldproof.reason.verdict.Verdict;
import coldproof.report.export.TidyTable.Column;
import coldproof.report.export.TidyTable.Type;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The table of verdicts: one row a changed level. */
public final class VerdictColumns {
    private static final List<Column> COLUMNS = List.of(
            new Column("factor", Type.TEXT, "", "the compared factor"),
            new Column("baseline", Type.TEXT, "", "its level compared with"),
            new Column("against", Type.TEXT, "", "its changed level"),
            new Column("verdict", Type.TEXT, "", "what the data say, a fixed word"),
            new Column("decision", Type.TEXT, "", "what became of the claim: pass, fail or undecided"),
            new Column("effect", Type.NUMBER, "%", "the change, above 0 is better"),
            new Column("low", Type.NUMBER, "%", "lower end of its interval"),
            new Column("high", Type.NUMBER, "%", "upper end of its interval"),
            new Column("interval_level", Type.NUMBER, "", "confidence level of the interval"),
            new Column("log_effect", Type.NUMBER, "", "natural logarithm of the ratio"),
            new Column("standard_error", Type.NUMBER, "", "of log_effect"),
            new Column("df", Type.NUMBER, "", "degrees of freedom"),
            new Column("t", Type.NUMBER, "", "log_effect / standard_error"),
            new Column("p", Type.NUMBER, "", "two-sided p value"),
            new Column("randomisation_p", Type.NUMBER, "", "p value from the run orders alone"),
            new Column("method", Type.TEXT, "", "how it was tested"));

    private VerdictColumns() {}

    /** The table of these changes, in their order. */
    public static TidyTable table(List<Compared> answers) {
        return new TidyTable("verdicts", "the verdict on one changed level", COLUMNS, answers.stream().map(VerdictColumns::row).toList());
    }

    private static List<Optional<Object>> row(Compared one) {
        Verdict verdict = one.verdict();
        Optional<Verdict.Change> change = verdict.estimate();
        Optional<Interval> percent = verdict.interval().map(Interval::logToPercent);
        List<Optional<Object>> row = new ArrayList<>(List.of(Optional.of(one.question().factor()), Optional.of(one.question().baseline()), Optional.of(one.question().against()),
                Optional.of(verdict.word().code()), Optional.of(verdict.decision().code())));
        row.add(number(change.map(found -> LogRatio.toPercent(found.log()))));
        row.add(number(percent.map(Interval::low)));
        row.add(number(percent.map(Interval::high)));
        row.add(number(percent.map(Interval::level)));
        row.add(number(change.map(Verdict.Change::log)));
        row.add(number(change.map(Verdict.Change::standardError)));
        row.add(number(change.map(Verdict.Change::degreesOfFreedom)));
        row.add(number(change.map(Verdict.Change::t)));
        row.add(number(change.map(Verdict.Change::p)));
        row.add(number(verdict.randomisation().map(Randomisation::p)));
        row.add(change.isPresent() ? Optional.of(verdict.method()) : Optional.empty());
        return row;
    }

    private static Optional<Object> number(Optional<Double> value) {
        return value.filter(Double::isFinite).map(found -> found);
    }
}
