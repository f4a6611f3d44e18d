package coldproof.report.export;

import coldproof.plan.Plan;
import coldproof.study.Deviation;
import coldproof.study.StudyState;
import coldproof.study.Trial;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The tables of a study: trials that count, loops within them, what was skipped, deviations, and the dictionary of all columns. */
public final class StudyExport {
    private StudyExport() {}

    /**
     * The tables, the dictionary last.
     *
     * @param plan the plan in force
     * @param state what happened
     */
    public static List<TidyTable> tables(Plan plan, StudyState state) {
        return tables(plan, state, List.of());
    }

    /** The same with further tables before the dictionary, which explains them too. */
    public static List<TidyTable> tables(Plan plan, StudyState state, List<TidyTable> further) {
        List<TidyTable> tables = new ArrayList<>(List.of(TrialColumns.table(plan, state), loops(plan, state), skipped(state), deviations(state)));
        tables.addAll(further);
        tables.add(dictionary(tables));
        return tables;
    }

    private static TidyTable loops(Plan plan, StudyState state) {
        List<List<Optional<Object>>> rows = new ArrayList<>();
        for (Trial trial : state.trials()) {
            int loop = 1;
            for (double result : trial.recorded().loops()) {
                rows.add(List.of(Optional.of((long) trial.position()), Optional.of((long) loop++), Optional.of(result)));
            }
        }
        return new TidyTable("loops", "one loop of a looped workload; loops of one trial are never replicates",
                List.of(new TidyTable.Column("trial", TidyTable.Type.WHOLE, "", "place of the trial in the run sheet"),
                        new TidyTable.Column("loop", TidyTable.Type.WHOLE, "", "place of the loop in the trial, first is 1"),
                        new TidyTable.Column("result", TidyTable.Type.NUMBER, plan.metric().unit(), "result of the loop")),
                rows);
    }

    private static TidyTable skipped(StudyState state) {
        List<List<Optional<Object>>> rows = new ArrayList<>();
        for (Map.Entry<Integer, String> each : state.skipped().entrySet()) {
            rows.add(List.of(Optional.of((long) each.getKey()), Optional.of(each.getValue())));
        }
        return new TidyTable("skipped", "one trial of the run sheet that was left out",
                List.of(new TidyTable.Column("trial", TidyTable.Type.WHOLE, "", "place of the trial in the run sheet"),
                        new TidyTable.Column("reason", TidyTable.Type.TEXT, "", "why it was left out")),
                rows);
    }

    private static TidyTable deviations(StudyState state) {
        List<List<Optional<Object>>> rows = new ArrayList<>();
        for (Deviation each : state.deviations()) {
            rows.add(List.of(Optional.of(each.sequence()), Optional.of(each.code()), Optional.of(each.text())));
        }
        return new TidyTable("deviations", "one departure from the frozen plan, or one touch of the data after the fact",
                List.of(new TidyTable.Column("entry", TidyTable.Type.WHOLE, "", "number of the journal entry at which it shows"),
                        new TidyTable.Column("code", TidyTable.Type.TEXT, "", "which kind of departure, a fixed word"),
                        new TidyTable.Column("text", TidyTable.Type.TEXT, "", "what departed, one sentence")),
                rows);
    }

    private static TidyTable dictionary(List<TidyTable> tables) {
        List<List<Optional<Object>>> rows = new ArrayList<>();
        for (TidyTable table : tables) {
            for (TidyTable.Column column : table.columns()) {
                rows.add(List.of(Optional.of(table.name()), Optional.of(column.name()), Optional.of(column.type().word()),
                        column.unit().isEmpty() ? Optional.empty() : Optional.of(column.unit()), Optional.of(column.meaning())));
            }
        }
        return new TidyTable("dictionary", "one column of the other tables",
                List.of(new TidyTable.Column("table", TidyTable.Type.TEXT, "", "the table"),
                        new TidyTable.Column("column", TidyTable.Type.TEXT, "", "the column"),
                        new TidyTable.Column("type", TidyTable.Type.TEXT, "", "what its cells are"),
                        new TidyTable.Column("unit", TidyTable.Type.TEXT, "", "unit of its numbers"),
                        new TidyTable.Column("meaning", TidyTable.Type.TEXT, "", "what it says")),
                rows);
    }
}
