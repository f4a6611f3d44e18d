package coldproof.job;

import coldproof.files.table.Table;
import coldproof.files.table.TableReader;
import coldproof.quantity.NearestWord;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import coldproof.reason.verdict.Observation;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Turns a table of trials into what the verdict sees. */
final class TrialsTable {
    private static final int MOST_CHANGES = 50; // more levels are a measured column, not a factor

    private final Table table;
    private final TrialsQuestion question;
    private final int metric;
    private final int factor;
    private final OptionalInt session;
    private final OptionalInt order;
    private final OptionalInt pair;
    private final List<Integer> adjust;
    private final Adjustment adjustment;

    private TrialsTable(Table table, TrialsQuestion question) {
        this.table = table;
        this.question = question;
        this.metric = table.column(question.metric(), "--metric");
        this.factor = table.column(question.factor(), "--factor");
        this.session = optional(question.session(), "--session");
        this.order = optional(question.order(), "--order");
        this.pair = optional(question.pair(), "--pair");
        this.adjust = question.adjustFor().stream().map(name -> table.column(name, "--adjust-for")).toList();
        this.adjustment = new Adjustment(adjust, order, session);
    }

    /**
     * The trials of a question.
     *
     * @param against the changed levels: those asked for, else every level but the baseline in the order of the table
     * @param observations trials of the baseline and of these levels
     */
    record Found(List<String> against, List<Observation> observations) {}

    /**
     * Reads the trials that the question is about.
     *
     * @throws Refused if the table, a column or a cell is wrong; every bad cell is reported
     */
    static Found find(TrialsQuestion question) {
        return new TrialsTable(TableReader.read(question.file()), question).found();
    }

    private OptionalInt optional(Optional<String> name, String option) {
        return name.isPresent() ? OptionalInt.of(table.column(name.get(), option)) : OptionalInt.empty();
    }

    private Found found() {
        List<Table.Row> rows = kept();
        if (rows.isEmpty()) {
            throw new Refused(Problem.of("there is no row below the heading", Place.named(table.name()), "a row for each trial", "Add the trials."));
        }
        refuseSpellings(rows);
        requireLevel(rows, question.baseline(), "--baseline");
        question.against().forEach(level -> requireLevel(rows, level, "--against"));
        List<String> against = question.against().isEmpty() ? others(rows) : question.against();
        return new Found(against, observations(rows.stream()
                .filter(row -> row.text(factor).equals(question.baseline()) || against.contains(row.text(factor))).toList()));
    }

    /** Every level but the baseline, by name: the order of the rows is no order of levels. */
    private List<String> others(List<Table.Row> rows) {
        List<String> others = rows.stream().map(row -> row.text(factor)).distinct().filter(level -> !level.equals(question.baseline())).sorted().toList();
        if (others.isEmpty() || others.size() > MOST_CHANGES) {
            throw new Refused(Problem.of("column " + question.factor() + " has " + others.size() + " levels beside " + question.baseline(),
                    Place.named("--against"), "from 1 to " + MOST_CHANGES + " changed levels", "Name the changed levels with --against, or choose another --factor."));
        }
        return others;
    }

    private List<Observation> observations(List<Table.Row> compared) {
        Table kept = new Table(table.name(), table.columns(), table.units(), compared);
        List<Problem> problems = new ArrayList<>();
        double[] scores = numbers(kept, metric, problems);
        double[] places = order.isPresent() ? numbers(kept, order.getAsInt(), problems) : new double[0];
        List<List<Double>> covariates = adjustment.covariates(kept);
        List<Integer> factors = adjustment.factors(kept);
        List<Observation> observations = new ArrayList<>();
        for (int i = 0; i < scores.length; i++) {
            Table.Row row = compared.get(i);
            if (scores[i] > 0) {
                double place = i < places.length ? places[i] : Double.NaN;
                observations.add(new Observation(row.text(factor), text(row, session), place, text(row, pair),
                        factors.stream().map(row::text).toList(), covariates.get(i), scores[i]));
            } else {
                problems.add(Problem.of("the score is " + row.text(metric), kept.place(row, metric), "a number above 0, because changes are ratios",
                        "Correct the cell, or take the row out."));
            }
        }
        if (!problems.isEmpty()) {
            throw new Refused(problems);
        }
        return observations;
    }

    private static double[] numbers(Table kept, int column, List<Problem> problems) {
        try {
            return kept.numbers(column);
        } catch (Refused refused) {
            problems.addAll(refused.problems());
            return new double[0];
        }
    }

    private static String text(Table.Row row, OptionalInt column) {
        return column.isPresent() ? row.text(column.getAsInt()) : "";
    }

    private List<Table.Row> kept() {
        List<Table.Row> rows = table.rows();
        for (TrialsQuestion.Where where : question.where()) {
            int column = table.column(where.column(), "--where");
            List<Table.Row> before = rows;
            rows = rows.stream().filter(row -> row.text(column).equals(where.value())).toList();
            if (rows.isEmpty()) {
                Set<String> values = values(before, column);
                throw new Refused(new Problem("no row has " + where.column() + "=" + where.value(), Place.named("--where"),
                        "one of: " + String.join(", ", values), NearestWord.of(where.value(), values), "Correct the value."));
            }
        }
        return rows;
    }

    /** A level written in two ways would leave rows out, or be compared with itself. */
    private void refuseSpellings(List<Table.Row> rows) {
        Map<String, String> first = new HashMap<>();
        Set<String> levels = rows.stream().map(row -> row.text(factor)).collect(Collectors.toSet());
        Stream.concat(Stream.of(question.baseline()), question.against().stream()).filter(levels::contains).forEach(level -> first.putIfAbsent(plain(level), level));
        List<Problem> problems = new ArrayList<>();
        for (Table.Row row : rows) {
            String level = row.text(factor);
            String known = first.putIfAbsent(plain(level), level);
            if (known != null && !known.equals(level)) {
                problems.add(Problem.of("the level \"" + level + "\" differs from \"" + known + "\" in spelling alone", table.place(row, factor), "one spelling of each level",
                        "Write it as \"" + known + "\", or give it a name of its own."));
            }
        }
        if (!problems.isEmpty()) {
            throw new Refused(problems);
        }
    }

    /** A level without what is no difference to a reader: capitals, blanks, decimals of a whole number. */
    private static String plain(String level) {
        String bare = level.toLowerCase(Locale.ROOT).replaceAll("\\s+", "");
        return bare.matches("[+-]?\\d+[.,]0+") ? bare.replaceAll("[.,]0+$", "") : bare;
    }

    private void requireLevel(List<Table.Row> rows, String level, String option) {
        Set<String> levels = values(rows, factor);
        if (!levels.contains(level)) {
            throw new Refused(new Problem("no trial has " + question.factor() + " = \"" + level + "\"", Place.named(option),
                    "one of its levels: " + String.join(", ", levels), NearestWord.of(level, levels), "Correct the word."));
        }
    }

    private static Set<String> values(List<Table.Row> rows, int column) {
        Set<String> values = new LinkedHashSet<>();
        for (Table.Row row : rows) {
            values.add(row.text(column));
            if (values.size() > 20) {
                break;
            }
        }
        return values;
    }
}
