package coldproof.files.ledger;

import coldproof.files.yaml.YamlForm;
import coldproof.files.yaml.YamlNode;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.QuantityText;
import coldproof.quantity.Refused;
import coldproof.reason.ledger.LedgerFigure;
import coldproof.reason.ledger.LedgerWorkload;
import coldproof.reason.ledger.StudyFigures;
import coldproof.stats.distribution.StudentT;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * Reads one figure: a value whose uncertainty is stated as {@code repeats} with {@code spread} (standard deviation of single results), as
 * {@code plus or minus} with its {@code coverage}, as {@code standard uncertainty}, by all {@code values}, or not at all; or a {@code study}.
 */
final class FigureReader {
    private static final double USUAL_COVERAGE = 95; // percent; what a bare ± most often means, common practice
    private final YamlForm form;
    private final List<Problem> problems;

    FigureReader(YamlForm form, List<Problem> problems) {
        this.form = form;
        this.problems = problems;
    }

    /** The figure; empty when something is wrong with it. */
    Optional<LedgerFigure> figure(LedgerWorkload workload, StudyFigures studies) {
        Optional<String> study = form.optionalText("study");
        if (study.isEmpty()) {
            return stated(workload.unit(), true);
        }
        Map<String, String> levels = new LinkedHashMap<>();
        form.form("condition").ifPresent(condition -> condition.keys().forEach(key -> levels.put(key, condition.optionalText(key).orElse(""))));
        form.finish();
        try {
            return Optional.of(studies.of(study.get(), levels, workload));
        } catch (Refused refused) {
            Place place = form.placeOf("study");
            refused.problems().forEach(problem -> problems.add(new Problem("study \"" + study.get() + "\": " + problem.what(), place, problem.expected(),
                    problem.nearest(), problem.remedy())));
            return Optional.empty();
        }
    }

    /** A figure given by numbers. */
    Optional<LedgerFigure> stated(String unit, boolean needsSource) {
        int before = problems.size();
        String source = needsSource ? form.text("source", "who says so, such as: own test, or a publication") : form.optionalText("source").orElse("as given");
        String date = date();
        Optional<LedgerFigure> figure = form.has("values") ? ofValues(unit, source, date) : ofValue(unit, source, date);
        form.finish();
        return problems.size() == before ? figure : Optional.empty();
    }

    private String date() {
        Optional<String> text = form.optionalText("date");
        try {
            text.ifPresent(LocalDate::parse);
        } catch (DateTimeException broken) {
            form.problem(Problem.of("`date` is \"" + text.orElseThrow() + "\"", form.placeOf("date"), "a date such as 2026-01-14", "Write year, month and day."));
        }
        return text.orElse("");
    }

    /** Every single result: mean and spread of their logarithms. */
    private Optional<LedgerFigure> ofValues(String unit, String source, String date) {
        Optional<YamlNode> node = form.node("values");
        List<YamlNode> items = node.get() instanceof YamlNode.Sequence sequence ? sequence.items() : List.of(node.get());
        double[] logs = new double[items.size()];
        for (int i = 0; i < logs.length; i++) {
            OptionalDouble value = items.get(i) instanceof YamlNode.Scalar scalar ? positive(scalar.text(), scalar.place(), "a value", unit) : OptionalDouble.empty();
            logs[i] = Math.log(value.orElse(1));
        }
        if (logs.length < 2 || items.stream().anyMatch(item -> !(item instanceof YamlNode.Scalar))) {
            form.problem(Problem.of("`values` is no list of two numbers or more", form.placeOf("values"), "every single result, such as [61.8, 62.4, 61.5]",
                    "Write them all, or `value` for a single one."));
            return Optional.empty();
        }
        return Optional.of(LedgerFigure.ofLogs(logs, source, date, false));
    }

    private Optional<LedgerFigure> ofValue(String unit, String source, String date) {
        OptionalDouble value = positive(form.text("value", "the figure, such as 61.8"), form.placeOf("value"), "`value`", unit);
        OptionalInt repeats = form.whole("repeats", 1, 1_000_000).map(OptionalInt::of).orElse(OptionalInt.empty());
        OptionalDouble spread = percentOf("spread", value, unit);
        OptionalDouble reach = percentOf("plus or minus", value, unit);
        OptionalDouble standard = percentOf("standard uncertainty", value, unit);
        double coverage = coverage(reach.isPresent());
        if (value.isEmpty()) {
            return Optional.empty();
        }
        long ways = List.of(spread, reach, standard).stream().filter(OptionalDouble::isPresent).count();
        if (ways > 1) {
            form.problem(Problem.of("the uncertainty is stated in " + ways + " ways", form.place(), "one of: spread, plus or minus, standard uncertainty", "Keep one."));
            return Optional.empty();
        }
        if (spread.isPresent() && repeats.orElse(0) < 2) {
            form.problem(Problem.of("a spread is given without `repeats` of 2 or more", form.placeOf("spread"), "how many results it is the standard deviation of",
                    "Add `repeats`, or write `plus or minus` or `standard uncertainty`."));
            return Optional.empty();
        }
        double freedom = repeats.orElse(0) >= 2 ? repeats.getAsInt() - 1.0 : Double.POSITIVE_INFINITY;
        OptionalDouble uncertainty = standard;
        if (spread.isPresent()) {
            uncertainty = OptionalDouble.of(spread.getAsDouble() / Math.sqrt(repeats.getAsInt()));
        } else if (reach.isPresent()) {
            uncertainty = OptionalDouble.of(reach.getAsDouble() / StudentT.upperPoint((1 - coverage / 100) / 2, freedom));
        }
        return Optional.of(new LedgerFigure(value.getAsDouble(), uncertainty, freedom, repeats, source, date, false));
    }

    private double coverage(boolean needed) {
        if (!form.has("coverage")) {
            return USUAL_COVERAGE;
        }
        double coverage = form.quantity("coverage", coldproof.quantity.Dimension.PERCENT).orElse(USUAL_COVERAGE);
        if (!needed || !(coverage >= 50 && coverage < 100)) {
            form.problem(Problem.of(needed ? "`coverage` is " + coverage + " %" : "`coverage` stands without `plus or minus`", form.placeOf("coverage"),
                    "how sure the source is that the truth lies inside, from 50 % to below 100 %", "Correct it, or leave it out for 95 %."));
            return USUAL_COVERAGE;
        }
        return coverage;
    }

    /** An amount in percent of the value, or in its unit. */
    private OptionalDouble percentOf(String key, OptionalDouble value, String unit) {
        Optional<String> text = form.optionalText(key);
        if (text.isEmpty()) {
            return OptionalDouble.empty();
        }
        String bare = text.get().strip();
        boolean percent = bare.endsWith("%");
        try {
            double amount = QuantityText.number(percent ? bare.substring(0, bare.length() - 1) : withoutUnit(bare, unit));
            if (amount >= 0) {
                double relative = percent ? amount : value.isPresent() ? 100 * amount / value.getAsDouble() : 0;
                if (relative < 100) {
                    return OptionalDouble.of(relative);
                }
            }
        } catch (QuantityText.Unreadable unreadable) {
            form.problem(Problem.of("`" + key + "` is \"" + text.get() + "\", " + unreadable.getMessage(), form.placeOf(key), amountExpected(unit), "Correct it."));
            return OptionalDouble.empty();
        }
        form.problem(Problem.of("`" + key + "` is \"" + text.get() + "\"", form.placeOf(key), amountExpected(unit) + ", below the value itself", "Correct it."));
        return OptionalDouble.empty();
    }

    private static String amountExpected(String unit) {
        return "0 or more, in percent (1.2 %)" + (unit.isEmpty() ? " or as a plain number" : " or in " + unit);
    }

    private OptionalDouble positive(String text, Place place, String what, String unit) {
        if (text.isBlank()) {
            return OptionalDouble.empty();
        }
        try {
            double number = QuantityText.number(withoutUnit(text, unit));
            if (number > 0) {
                return OptionalDouble.of(number);
            }
        } catch (QuantityText.Unreadable unreadable) {
            problems.add(Problem.of(what + " is \"" + text + "\", " + unreadable.getMessage(), place, "a number above 0" + (unit.isEmpty() ? "" : " in " + unit),
                    "Correct it."));
            return OptionalDouble.empty();
        }
        problems.add(Problem.of(what + " is \"" + text + "\"", place, "a number above 0, because changes are ratios", "Correct it, or leave the figure out."));
        return OptionalDouble.empty();
    }

    private static String withoutUnit(String text, String unit) {
        String bare = text.strip();
        return !unit.isEmpty() && bare.endsWith(unit) ? bare.substring(0, bare.length() - unit.length()).strip() : bare;
    }
}
