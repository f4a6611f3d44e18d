package coldproof.files.plan;

import coldproof.files.yaml.YamlForm;
import coldproof.files.yaml.YamlNode;
import coldproof.plan.Budget;
import coldproof.plan.Change;
import coldproof.plan.Factor;
import coldproof.plan.Level;
import coldproof.quantity.Dimension;
import coldproof.quantity.NearestWord;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Reads {@code budget}. */
final class BudgetReader {
    /** Air below this is taken to mean standing outdoors, where the plan does not say which levels do. A choice of ours. */
    private static final double OUTDOORS_BELOW_CELSIUS = 10;

    private final YamlForm plan;
    private final List<Problem> problems;
    private final List<Factor> factors;

    BudgetReader(YamlForm plan, List<Problem> problems, List<Factor> factors) {
        this.plan = plan;
        this.problems = problems;
        this.factors = factors;
    }

    Budget budget() {
        Optional<YamlForm> budget = plan.form("budget");
        if (budget.isEmpty()) {
            return new Budget(OptionalDouble.empty(), 0, Map.of(), coldLevels(), OptionalDouble.empty());
        }
        YamlForm form = budget.get();
        OptionalDouble trial = positive(form, "trial");
        double soak = notNegative(form, "soak");
        Map<String, Double> setUp = setUp(form);
        OptionalDouble most = positive(form, "outdoors at most");
        List<String> outdoors = form.has("outdoors") ? outdoors(form) : coldLevels();
        form.finish();
        return new Budget(trial, soak, setUp, outdoors, most);
    }

    private OptionalDouble positive(YamlForm form, String key) {
        OptionalDouble seconds = form.quantity(key, Dimension.TIME);
        if (seconds.isPresent() && !(seconds.getAsDouble() > 0)) {
            problems.add(Problem.of("`" + key + "` is not above zero", form.placeOf(key), Dimension.TIME.expected(), "Write a time above zero."));
            return OptionalDouble.empty();
        }
        return seconds;
    }

    private double notNegative(YamlForm form, String key) {
        double seconds = form.quantity(key, Dimension.TIME).orElse(0);
        if (seconds < 0) {
            problems.add(Problem.of("`" + key + "` is below zero", form.placeOf(key), Dimension.TIME.expected(), "Write a time of zero or more."));
            return 0;
        }
        return seconds;
    }

    private Map<String, Double> setUp(YamlForm form) {
        Map<String, Double> setUp = new LinkedHashMap<>();
        if (!form.has("set-up")) {
            return setUp;
        }
        if (form.node("set-up").orElseThrow() instanceof YamlNode.Scalar) {
            setUp.put("", notNegative(form, "set-up"));
            return setUp;
        }
        YamlForm inner = form.form("set-up").orElseThrow();
        List<String> levels = sessionLevels();
        for (String level : inner.keys()) {
            double seconds = notNegative(inner, level);
            if (levels.contains(level)) {
                setUp.put(level, seconds);
            } else {
                unknownLevel(level, inner.placeOfKey(level), levels);
            }
        }
        return setUp;
    }

    private List<String> outdoors(YamlForm form) {
        List<String> outdoors = new ArrayList<>();
        List<String> levels = sessionLevels();
        for (Map.Entry<String, Place> level : form.words("outdoors").entrySet()) {
            if (levels.contains(level.getKey())) {
                outdoors.add(level.getKey());
            } else {
                unknownLevel(level.getKey(), level.getValue(), levels);
            }
        }
        return outdoors;
    }

    private void unknownLevel(String level, Place place, List<String> levels) {
        problems.add(new Problem("no factor that changes per session has a level \"" + level + "\"", place, "one of: " + String.join(", ", levels),
                NearestWord.of(level, levels), "Correct the word."));
    }

    private List<String> sessionLevels() {
        List<String> levels = new ArrayList<>();
        for (Factor factor : factors) {
            if (factor.change() == Change.PER_SESSION) {
                levels.addAll(factor.levelNames());
            }
        }
        return levels;
    }

    private List<String> coldLevels() {
        return factors.stream().filter(factor -> factor.change() == Change.PER_SESSION).flatMap(factor -> factor.levels().stream())
                .filter(level -> level.air().isPresent() && level.air().get().degrees() < OUTDOORS_BELOW_CELSIUS).map(Level::name).toList();
    }
}
