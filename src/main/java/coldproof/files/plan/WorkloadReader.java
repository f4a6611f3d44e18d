package coldproof.files.plan;

import coldproof.files.yaml.YamlForm;
import coldproof.files.yaml.YamlNode;
import coldproof.plan.Comparison;
import coldproof.plan.Factor;
import coldproof.plan.Workload;
import coldproof.quantity.NearestWord;
import coldproof.quantity.Problem;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.regex.PatternSyntaxException;

/** Reads {@code workload}. */
final class WorkloadReader {
    private final YamlForm plan;
    private final List<Problem> problems;
    private final List<String> levels;

    WorkloadReader(YamlForm plan, List<Problem> problems, List<Factor> factors, Optional<Comparison> compare) {
        this.plan = plan;
        this.problems = problems;
        Optional<Factor> compared = compare.isPresent() ? Factor.named(compare.get().factor(), factors) : Optional.empty();
        this.levels = compared.isPresent() ? compared.get().levelNames() : List.of();
    }

    Workload workload() {
        Optional<YamlForm> workload = plan.form("workload");
        if (workload.isEmpty()) {
            return Workload.NONE;
        }
        YamlForm form = workload.get();
        String instruction = form.optionalText("instruction").orElse("");
        List<String> command = arguments(form, "command");
        Map<String, List<String>> byLevel = new LinkedHashMap<>();
        Optional<YamlForm> commands = form.form("command by level");
        if (commands.isPresent()) {
            byLevel(commands.get(), byLevel);
        }
        Optional<String> pattern = form.optionalText("score pattern");
        if (pattern.isPresent()) {
            check(pattern.get(), form);
        }
        form.finish();
        return new Workload(instruction, command, byLevel, pattern);
    }

    private void byLevel(YamlForm commands, Map<String, List<String>> byLevel) {
        for (String level : commands.keys()) {
            byLevel.put(level, arguments(commands, level));
            if (!levels.contains(level)) {
                problems.add(new Problem("the compared factor has no level \"" + level + "\"", commands.placeOfKey(level),
                        "one of: " + String.join(", ", levels), NearestWord.of(level, levels), "Correct the word."));
            }
        }
    }

    private List<String> arguments(YamlForm form, String key) {
        Optional<YamlNode> node = form.node(key);
        if (node.isEmpty()) {
            return List.of();
        }
        List<YamlNode> items = node.get() instanceof YamlNode.Sequence sequence ? sequence.items() : List.of();
        List<String> arguments = new ArrayList<>();
        for (YamlNode item : items) {
            if (item instanceof YamlNode.Scalar scalar) {
                arguments.add(scalar.text());
            }
        }
        if (arguments.isEmpty() || arguments.size() != items.size()) {
            problems.add(Problem.of("`" + key + "` is no command", node.get().place(), "a list: [program, argument, ...]",
                    "Write each argument as an item; no shell reads it."));
        }
        return arguments;
    }

    private void check(String pattern, YamlForm form) {
        try {
            int groups = Pattern.compile(pattern).matcher("").groupCount();
            if (groups != 1) {
                problems.add(Problem.of("`score pattern` has " + groups + " groups", form.placeOf("score pattern"), "exactly one (group) around the number",
                        "Put one pair of round brackets around the number."));
            }
        } catch (PatternSyntaxException broken) {
            problems.add(Problem.of("`score pattern` is no regular expression: " + broken.getDescription(), form.placeOf("score pattern"),
                    "a regular expression with one group, such as 'rate: ([0-9.]+)'", "Correct it; single quotes keep backslashes as they are."));
        }
    }
}
