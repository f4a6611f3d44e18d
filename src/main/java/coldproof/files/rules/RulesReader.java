package coldproof.files.rules;

import coldproof.files.yaml.YamlForm;
import coldproof.files.yaml.YamlNode;
import coldproof.files.yaml.YamlTree;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import coldproof.reason.safety.Condition;
import coldproof.reason.safety.Phase;
import coldproof.reason.safety.Reading;
import coldproof.reason.safety.SafetyLevel;
import coldproof.reason.safety.SafetyRule;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Reads a file of safety rules strictly: one topic, any number of rules, every problem reported. */
public final class RulesReader {
    private static final String NEVER = "never";
    private static final String WITH_A_REASON = "with a reason";

    private final List<Problem> problems;

    private RulesReader(List<Problem> problems) {
        this.problems = problems;
    }

    /**
     * Reads the rules of one file.
     *
     * @param file name shown in problems
     * @param text the YAML
     * @throws Refused with every problem found
     */
    public static List<SafetyRule> read(String file, String text) {
        List<Problem> problems = new ArrayList<>();
        YamlForm form = YamlForm.of(YamlTree.read(file, text), "the rules", problems);
        String topic = form.text("topic", "what the rules are about");
        List<SafetyRule> rules = new RulesReader(problems).rules(form, topic);
        form.finish();
        if (!problems.isEmpty()) {
            throw new Refused(problems);
        }
        return rules;
    }

    /** The rules below {@code rules}. */
    static List<SafetyRule> rulesOf(YamlForm form, String topic, List<Problem> problems) {
        return new RulesReader(problems).rules(form, topic);
    }

    private List<SafetyRule> rules(YamlForm form, String topic) {
        Optional<YamlNode> node = form.node("rules");
        if (node.isEmpty() || !(node.get() instanceof YamlNode.Sequence sequence)) {
            form.missing("rules", "a list of rules, each beginning with `- rule: name`");
            return List.of();
        }
        List<SafetyRule> rules = new ArrayList<>();
        Set<String> names = new HashSet<>();
        for (YamlNode item : sequence.items()) {
            YamlForm rule = YamlForm.of(item, "a rule", problems);
            rule(rule, topic).ifPresent(read -> {
                if (!names.add(read.id())) {
                    problems.add(Problem.of("the rule \"" + read.id() + "\" stands twice", rule.placeOf("rule"), "each name once", "Rename one."));
                }
                rules.add(read);
            });
        }
        return rules;
    }

    private Optional<SafetyRule> rule(YamlForm form, String topic) {
        int before = problems.size();
        String id = form.text("rule", "a name, such as charge-below-freezing");
        Optional<SafetyLevel> level = form.word("level", SafetyLevel.words()).flatMap(SafetyLevel::of);
        Optional<Phase> phase = form.word("phase", Phase.words()).flatMap(Phase::of);
        List<Phase> also = also(form);
        List<Condition> when = conditions(form, problems);
        String card = form.text("card", "one line for the field card");
        String text = form.text("text", "what to do");
        String why = form.text("why", "the reason");
        String source = form.text("source", "where the number comes from, or: " + SafetyRule.COMMON_PRACTICE);
        boolean may = form.word("set aside", List.of(NEVER, WITH_A_REASON)).orElse(WITH_A_REASON).equals(WITH_A_REASON);
        need(form, "level", SafetyLevel.words());
        need(form, "phase", Phase.words());
        form.finish();
        if (problems.size() > before) {
            return Optional.empty();
        }
        try {
            return Optional.of(new SafetyRule(id, topic, level.orElseThrow(), phase.orElseThrow(), also, when, card, oneLine(text), oneLine(why),
                    oneLine(source), may));
        } catch (IllegalArgumentException contradiction) {
            problems.add(Problem.of(contradiction.getMessage(), form.place(), "", "Correct the rule."));
            return Optional.empty();
        }
    }

    private static void need(YamlForm form, String key, List<String> words) {
        if (!form.has(key)) {
            form.missing(key, "one of: " + String.join(", ", words));
        }
    }

    private static List<Phase> also(YamlForm form) {
        List<Phase> also = new ArrayList<>();
        for (Map.Entry<String, Place> word : form.words("also").entrySet()) {
            Optional<Phase> phase = Phase.of(word.getKey());
            if (phase.isEmpty()) {
                form.wrongWord(word.getKey(), word.getValue(), "an item of `also`", Phase.words());
            }
            phase.ifPresent(also::add);
        }
        return also;
    }

    /** The conditions below {@code when}; none where it is not written. */
    static List<Condition> conditions(YamlForm form, List<Problem> problems) {
        List<Condition> conditions = new ArrayList<>();
        Optional<YamlForm> when = form.form("when");
        if (when.isEmpty()) {
            return conditions;
        }
        for (String word : when.get().keys()) {
            String text = when.get().text(word, "below 0 °C");
            Optional<Reading> reading = Reading.of(word);
            if (reading.isEmpty()) {
                List<String> words = Arrays.stream(Reading.values()).map(Reading::word).toList();
                when.get().wrongWord(word, when.get().placeOfKey(word), "a key of `when`", words);
            } else if (!text.isEmpty()) {
                ConditionText.read(when.get(), reading.get(), text, when.get().placeOf(word)).ifPresent(conditions::add);
            }
        }
        return conditions;
    }

    private static String oneLine(String text) {
        return text.strip().replaceAll("\\s+", " ");
    }
}
