package coldproof.report.export;

import coldproof.plan.Factor;
import coldproof.plan.Plan;
import coldproof.quantity.ConstantWord;
import coldproof.report.export.TidyTable.Column;
import coldproof.report.export.TidyTable.Type;
import coldproof.study.Observed;
import coldproof.study.StartConditionsChecked;
import coldproof.study.StudyState;
import coldproof.study.Trial;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/** The table of trials: fixed columns, one for each factor of the plan, one for each reading taken before a trial. */
final class TrialColumns {
    private final List<Column> columns = new ArrayList<>();
    private final List<Function<Trial, Optional<Object>>> cells = new ArrayList<>();
    private final Set<String> names = new HashSet<>();

    private TrialColumns(Plan plan, StudyState state) {
        String unit = plan.metric().unit();
        add("trial", Type.WHOLE, "", "place in the run sheet, first is 1; the order of running", trial -> Optional.of((long) trial.position()));
        add("session", Type.WHOLE, "", "number of the sitting at the bench", trial -> Optional.of((long) trial.recorded().session()));
        add("order", Type.WHOLE, "", "place within the session, first is 1", trial -> Optional.of((long) trial.recorded().orderInSession()));
        for (Factor factor : plan.factors()) {
            add(word(factor.name(), "level_"), Type.TEXT, "", "level of the factor \"" + factor.name() + "\", set " + factor.change().word(),
                    trial -> Optional.ofNullable(trial.recorded().levels().get(factor.name())));
        }
        add(word("score", ""), Type.NUMBER, unit, plan.metric().name() + ", " + plan.metric().better().word() + " is better; corrections applied",
                trial -> Optional.of(trial.score()));
        add(word("score_as_recorded", ""), Type.NUMBER, unit, "the score as first recorded", trial -> Optional.of(trial.recorded().score()));
        add(word("corrections", ""), Type.WHOLE, "", "how often the score was corrected", trial -> Optional.of((long) trial.corrections().size()));
        add(word("started", ""), Type.TIME, "", "when the workload started, by the wall clock",
                trial -> Optional.of(DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(trial.recorded().startedAt())));
        add(word("elapsed", ""), Type.NUMBER, "s", "how long it ran, by the monotonic clock", trial -> Optional.of(trial.recorded().elapsedSeconds()));
        add(word("source", ""), Type.TEXT, "", "where the score came from",
                trial -> Optional.of(ConstantWord.of(trial.recorded().source())));
        add(word("trace", ""), Type.TEXT, "", "telemetry of the trial, a path in the study folder", trial -> trial.recorded().trace().map(path -> path));
        add(word("entry", ""), Type.WHOLE, "", "number of the journal entry that recorded it", trial -> Optional.of(trial.sequence()));
        readings(state);
    }

    static TidyTable table(Plan plan, StudyState state) {
        TrialColumns made = new TrialColumns(plan, state);
        List<List<Optional<Object>>> rows = new ArrayList<>();
        for (Trial trial : state.trials()) {
            List<Optional<Object>> row = new ArrayList<>();
            made.cells.forEach(cell -> row.add(cell.apply(trial)));
            rows.add(row);
        }
        return new TidyTable("trials", "one trial that counts, in the order run; trials taken back are not in it", made.columns, rows);
    }

    private void add(String name, Type type, String unit, String meaning, Function<Trial, Optional<Object>> cell) {
        names.add(name);
        columns.add(new Column(name, type, unit, meaning));
        cells.add(cell);
    }

    /** A name that programs read without quoting; the prefix and a number tell it from names taken. */
    private String word(String text, String prefixIfTaken) {
        String plain = text.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]+", "_").replaceAll("^_|_$", "");
        if (plain.isEmpty() || !Character.isLetter(plain.charAt(0))) {
            plain = "x" + plain;
        }
        String name = names.contains(plain) ? prefixIfTaken + plain : plain;
        for (int copy = 2; names.contains(name); copy++) {
            name = prefixIfTaken + plain + "_" + copy;
        }
        return name;
    }

    private void readings(StudyState state) {
        Map<String, Map<Integer, Observed>> byName = new LinkedHashMap<>();
        state.startConditions().forEach(check -> collect(check.event(), byName));
        byName.forEach((name, byPosition) -> {
            String unit = byPosition.values().iterator().next().unit();
            boolean numbers = byPosition.values().stream().allMatch(reading -> reading.amount().isPresent() && reading.unit().equals(unit));
            String meaning = "\"" + name + "\" as read before the trial";
            add(word("start_" + name, ""), numbers ? Type.NUMBER : Type.TEXT, numbers ? unit : "", meaning,
                    trial -> Optional.ofNullable(byPosition.get(trial.position())).map(reading -> numbers ? (Object) reading.amount().getAsDouble()
                            : text(reading)));
            if (byPosition.values().stream().anyMatch(reading -> !reading.sensor().isEmpty())) {
                add(word("start_" + name + "_sensor", ""), Type.TEXT, "", "the sensor that showed \"" + name + "\"; empty where a person gave it",
                        trial -> Optional.ofNullable(byPosition.get(trial.position())).map(Observed::sensor).filter(sensor -> !sensor.isEmpty()).map(Object.class::cast));
            }
        });
    }

    private static void collect(StartConditionsChecked check, Map<String, Map<Integer, Observed>> byName) {
        check.position().ifPresent(position -> check.readings()
                .forEach((name, reading) -> byName.computeIfAbsent(name, any -> new HashMap<>()).put(position, reading)));
    }

    private static String text(Observed reading) {
        return reading.amount().isPresent() ? (reading.amount().getAsDouble() + " " + reading.unit()).strip() : reading.word();
    }
}
