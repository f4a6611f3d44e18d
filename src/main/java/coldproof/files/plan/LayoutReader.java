package coldproof.files.plan;

import coldproof.files.yaml.YamlForm;
import coldproof.files.yaml.YamlNode;
import coldproof.plan.Change;
import coldproof.plan.Comparison;
import coldproof.plan.Factor;
import coldproof.plan.Layout;
import coldproof.plan.Layout.Kind;
import coldproof.plan.Order;
import coldproof.quantity.NearestWord;
import coldproof.quantity.Problem;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Reads {@code layout}: exactly one of {@code sessions}, {@code trials}, {@code pairs}, and what goes with it. */
final class LayoutReader {
    private static final int MOST = 10_000;

    private final YamlForm plan;
    private final List<Problem> problems;
    private final List<Factor> factors;
    private final Factor compared;
    private final Comparison compare;

    LayoutReader(YamlForm plan, List<Problem> problems, List<Factor> factors, Comparison compare) {
        this.plan = plan;
        this.problems = problems;
        this.factors = factors;
        this.compare = compare;
        this.compared = Factor.named(compare.factor(), factors).orElseThrow();
    }

    Optional<Layout> layout() {
        Optional<YamlForm> layout = plan.form("layout");
        if (layout.isEmpty()) {
            plan.missing("layout", "{sessions: {room: 4, chilled: 4}, trials per condition: 2}, {trials: 8} or {pairs: 8}");
            return Optional.empty();
        }
        YamlForm form = layout.get();
        List<String> kinds = new ArrayList<>();
        for (String key : List.of("sessions", "trials", "pairs")) {
            if (form.has(key)) {
                kinds.add(key);
            }
        }
        Order order = form.word("order", List.of("randomised", "counterbalanced")).equals(Optional.of("randomised")) ? Order.RANDOMISED
                : Order.COUNTERBALANCED;
        int perCondition = form.whole("trials per condition", 1, 1000).orElse(1);
        if (kinds.size() != 1) {
            problems.add(Problem.of("`layout` has " + (kinds.isEmpty() ? "no arrangement" : String.join(" and ", kinds)), plan.placeOfKey("layout"),
                    "exactly one of: sessions, trials, pairs", "Keep one."));
            form.finish();
            return Optional.empty();
        }
        Optional<Layout> read = switch (kinds.get(0)) {
            case "sessions" -> sessions(form, perCondition, order);
            case "trials" -> trials(form, order);
            default -> pairs(form, order);
        };
        form.finish();
        return read;
    }

    private Optional<Layout> sessions(YamlForm form, int perCondition, Order order) {
        Optional<Factor> sessionFactor = Factor.ofSessions(factors);
        Optional<Map<String, Integer>> counts = sessionFactor.isEmpty() ? ofAll(form.whole("sessions", 1, MOST))
                : counts(form, "sessions", sessionFactor.get(), sessionFactor.get().levelNames());
        return layout(Kind.SESSIONS, counts, perCondition, order);
    }

    private static Optional<Map<String, Integer>> ofAll(Optional<Integer> count) {
        return count.isPresent() ? Optional.of(Map.of("", count.get())) : Optional.empty();
    }

    private static Optional<Layout> layout(Kind kind, Optional<Map<String, Integer>> counts, int perCondition, Order order) {
        return counts.isPresent() ? Optional.of(new Layout(kind, counts.get(), perCondition, order)) : Optional.empty();
    }

    private Optional<Layout> trials(YamlForm form, Order order) {
        if (form.has("trials per condition")) {
            onlyWithSessions(form);
        }
        if (compared.change() == Change.PER_SESSION) {
            problems.add(Problem.of("`trials` lays out single trials, but " + compared.name() + " changes per session", form.placeOfKey("trials"),
                    "`sessions`, because trials of one sitting share its setting", "Write sessions: {" + compare.baseline() + ": 4, ...}."));
            return Optional.empty();
        }
        List<String> levels = new ArrayList<>();
        levels.add(compare.baseline());
        levels.addAll(compare.against());
        return layout(Kind.ALTERNATING, counts(form, "trials", compared, levels), 1, order);
    }

    private Optional<Layout> pairs(YamlForm form, Order order) {
        if (form.has("trials per condition")) {
            onlyWithSessions(form);
        }
        if (compared.change() == Change.PER_SESSION) {
            problems.add(Problem.of("`pairs` lays out neighbouring trials, but " + compared.name() + " changes per session", form.placeOfKey("pairs"),
                    "`sessions`", "Write sessions: {" + compare.baseline() + ": 4, ...}, or let the factor change per trial."));
            return Optional.empty();
        }
        if (compare.against().size() > 1) {
            problems.add(Problem.of("pairs compare two levels, but `against` names " + compare.against().size(), form.placeOfKey("pairs"),
                    "one level in `against`", "Use `trials` or `sessions` for several changes."));
            return Optional.empty();
        }
        return layout(Kind.PAIRED, ofAll(form.whole("pairs", 2, MOST)), 1, order);
    }

    private void onlyWithSessions(YamlForm form) {
        problems.add(Problem.of("`trials per condition` goes with `sessions` only", form.placeOfKey("trials per condition"),
                "no such key here", "Remove it."));
    }

    /** Either one number for all levels or a mapping of every level to its number. */
    private Optional<Map<String, Integer>> counts(YamlForm form, String key, Factor factor, List<String> levels) {
        Map<String, Integer> counts = new LinkedHashMap<>();
        if (form.node(key).orElseThrow() instanceof YamlNode.Scalar) {
            Optional<Integer> each = form.whole(key, 1, MOST);
            if (each.isEmpty()) {
                return Optional.empty();
            }
            for (String level : levels) {
                counts.put(level, each.get());
            }
            return Optional.of(counts);
        }
        YamlForm inner = form.form(key).orElseThrow();
        boolean good = true;
        for (String level : inner.keys()) {
            if (!levels.contains(level)) {
                problems.add(new Problem("the factor " + factor.name() + " has no level \"" + level + "\" to lay out", inner.placeOfKey(level),
                        "one of: " + String.join(", ", levels), NearestWord.of(level, levels), "Correct the word."));
                good = false;
            }
        }
        for (String level : levels) {
            Optional<Integer> count = inner.whole(level, 1, MOST);
            if (!inner.has(level)) {
                inner.missing(level, "how many for " + level);
            }
            good &= count.isPresent();
            if (count.isPresent()) {
                counts.put(level, count.get());
            }
        }
        return good ? Optional.of(counts) : Optional.empty();
    }
}
