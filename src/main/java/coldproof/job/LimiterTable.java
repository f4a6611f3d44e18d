package coldproof.job;

import coldproof.files.table.Table;
import coldproof.files.table.TableReader;
import coldproof.plan.Better;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import coldproof.reason.limiter.LimiterTrial;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Turns a table of trials with traces into what the limiter sees. */
final class LimiterTable {
    private static final Pattern NUMBERED = Pattern.compile("(.*?\\D)(\\d+)");
    private static final Pattern TIMES = Pattern.compile("(?i)time|elapsed|duration|seconds|latency|dauer|zeit");
    private static final int FEWEST_LOOPS = 4;
    private static final double SAME_FIGURE = 0.02; // relative: mean or sum of the loops is the score, but for rounding

    private final Table table;
    private final LimiterQuestion question;
    private final Path folder;

    private LimiterTable(Table table, LimiterQuestion question) {
        this.table = table;
        this.question = question;
        Path parent = question.file().getParent();
        folder = parent == null ? Path.of("") : parent;
    }

    /**
     * What a table names, before the traces are read.
     *
     * @param log the log
     * @param levels level of every factor
     * @param session session, may be empty
     * @param order place in the run order; NaN when not known
     * @param logScore logarithm of the score, more is better; NaN when not known
     * @param loops loops inside the trial
     */
    record Entry(Path log, Map<String, String> levels, String session, double order, double logScore, LimiterTrial.Loops loops) {}

    /**
     * The trials of a table that have a trace.
     *
     * @throws Refused if the table, a column or a cell is wrong, or no trial names a trace
     */
    static List<Entry> entries(LimiterQuestion question) {
        return new LimiterTable(TableReader.read(question.file()), question).entries();
    }

    private List<Entry> entries() {
        int trace = table.column(question.traceColumn(), "--trace-column");
        Map<String, Integer> factors = new LinkedHashMap<>();
        question.factors().forEach(factor -> factors.put(factor, table.column(factor, "--factor")));
        OptionalInt session = orByName(question.session(), "--session", "session");
        OptionalInt order = orByName(question.order(), "--order", "order");
        List<Integer> loops = loopColumns();
        OptionalInt metric = question.metric().isPresent() ? optional(question.metric(), "--metric") : onlyScore(loops);
        List<Entry> entries = new ArrayList<>();
        for (Table.Row row : table.rows()) {
            if (!Table.isMissing(row.text(trace))) {
                Map<String, String> levels = new LinkedHashMap<>();
                factors.forEach((factor, column) -> levels.put(factor, row.text(column)));
                entries.add(new Entry(log(row, trace), levels, session.isPresent() ? row.text(session.getAsInt()) : "", number(row, order),
                        logScore(row, metric), loops(row, loops, metric)));
            }
        }
        if (entries.isEmpty()) {
            throw new Refused(Problem.of("no row of " + table.name() + " names a trace", Place.named("--trace-column"), "the file name of a log in each row",
                    "Write the names, relative to the folder of the table."));
        }
        return entries;
    }

    private Path log(Table.Row row, int trace) {
        try {
            Path log = folder.resolve(row.text(trace));
            return Files.exists(log) ? log : folder.resolve(row.text(trace).replace('\\', '/')); // a table may come from a system with the other separator
        } catch (InvalidPathException broken) {
            throw new Refused(Problem.of("\"" + row.text(trace) + "\" is no file name here", table.place(row, trace), "the file name of a log", "Correct the cell."));
        }
    }

    private OptionalInt optional(Optional<String> name, String option) {
        return name.isPresent() ? OptionalInt.of(table.column(name.get(), option)) : OptionalInt.empty();
    }

    private OptionalInt orByName(Optional<String> name, String option, String usual) {
        return name.isPresent() ? optional(name, option) : positionOf(usual);
    }

    private OptionalInt positionOf(String name) {
        for (int i = 0; i < table.columns().size(); i++) {
            if (table.columns().get(i).strip().equalsIgnoreCase(name)) {
                return OptionalInt.of(i);
            }
        }
        return OptionalInt.empty();
    }

    /** The only column of positive numbers that are not all whole, loops left aside; none where there are several. */
    private OptionalInt onlyScore(List<Integer> loops) {
        List<Integer> found = new ArrayList<>();
        for (int i = 0; i < table.columns().size(); i++) {
            if (!loops.contains(i) && isMeasured(i)) {
                found.add(i);
            }
        }
        return found.size() == 1 ? OptionalInt.of(found.get(0)) : OptionalInt.empty();
    }

    private boolean isMeasured(int column) {
        boolean fraction = false;
        for (Table.Row row : table.rows()) {
            if (!table.isNumber(row, column) || table.number(row, column) <= 0) {
                return false;
            }
            fraction |= table.number(row, column) != Math.rint(table.number(row, column));
        }
        return fraction;
    }

    private double number(Table.Row row, OptionalInt column) {
        OptionalDouble number = column.isPresent() ? table.numberIfPresent(row, column.getAsInt()) : OptionalDouble.empty();
        return number.orElse(Double.NaN);
    }

    private double logScore(Table.Row row, OptionalInt metric) {
        double score = number(row, metric);
        if (score <= 0) {
            throw new Refused(Problem.of("the score is " + row.text(metric.getAsInt()), table.place(row, metric.getAsInt()),
                    "a number above 0, because changes are ratios", "Correct the cell, or take the row out."));
        }
        return better(metric) == Better.HIGHER ? Math.log(score) : -Math.log(score);
    }

    /** Columns called by one stem and the numbers 1, 2, 3…: the longest such run of four or more whose cells are numbers. */
    private List<Integer> loopColumns() {
        Map<String, List<Integer>> stems = new LinkedHashMap<>();
        for (int i = 0; i < table.columns().size(); i++) {
            Matcher matcher = NUMBERED.matcher(table.columns().get(i).strip());
            if (matcher.matches()) {
                List<Integer> run = stems.computeIfAbsent(matcher.group(1), stem -> new ArrayList<>());
                if (matcher.group(2).length() < 6 && Integer.parseInt(matcher.group(2)) == run.size() + 1) {
                    run.add(i);
                }
            }
        }
        List<Integer> longest = List.of();
        for (List<Integer> run : stems.values()) {
            longest = run.size() > longest.size() ? run : longest;
        }
        return longest.size() >= FEWEST_LOOPS ? longest : List.of();
    }

    /** As the person says; of a score that nobody named, less is better where its name is one of a time. */
    private Better better(OptionalInt metric) {
        boolean named = question.metric().isPresent() || metric.isEmpty();
        return named || !TIMES.matcher(table.columns().get(metric.getAsInt())).find() ? question.better() : Better.LOWER;
    }

    /** Loops whose mean is the score are rates, or times where less is better; loops whose sum is the score are times. */
    private LimiterTrial.Loops loops(Table.Row row, List<Integer> columns, OptionalInt metric) {
        double score = number(row, metric);
        double[] values = new double[columns.size()];
        double sum = 0;
        for (int i = 0; i < values.length; i++) {
            OptionalDouble value = table.isNumber(row, columns.get(i)) ? table.numberIfPresent(row, columns.get(i)) : OptionalDouble.empty();
            if (value.isEmpty() || !(value.getAsDouble() > 0)) {
                return LimiterTrial.Loops.NONE;
            }
            values[i] = value.getAsDouble();
            sum += values[i];
        }
        boolean isMean = Math.abs(sum / values.length / score - 1) < SAME_FIGURE;
        boolean isSum = Math.abs(sum / score - 1) < SAME_FIGURE;
        if (!isMean && !isSum) {
            return LimiterTrial.Loops.NONE;
        }
        return better(metric) == Better.HIGHER ? isMean ? LimiterTrial.Loops.ofRates(values) : LimiterTrial.Loops.NONE : LimiterTrial.Loops.ofTimes(values);
    }
}
