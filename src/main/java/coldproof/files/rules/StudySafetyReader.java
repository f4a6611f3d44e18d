package coldproof.files.rules;

import coldproof.files.yaml.YamlForm;
import coldproof.files.yaml.YamlNode;
import coldproof.files.yaml.YamlTree;
import coldproof.physics.DeviceClass;
import coldproof.physics.Site;
import coldproof.quantity.Dimension;
import coldproof.quantity.NearestWord;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.QuantityText;
import coldproof.quantity.Refused;
import coldproof.reason.safety.Reading;
import coldproof.reason.safety.RuleChange;
import coldproof.reason.safety.SafetyLevel;
import coldproof.reason.safety.SafetyRule;
import coldproof.reason.safety.SafetyScene;
import coldproof.reason.safety.StudySafety;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Reads the {@code safety.yaml} of a study: rules tightened, loosened and added, place, device and battery. */
public final class StudySafetyReader {
    private static final List<Reading> THROUGHOUT = List.of(Reading.BATTERY_ENERGY, Reading.DRAW, Reading.ALTITUDE);

    private final List<Problem> problems = new ArrayList<>();
    private final List<StudySafety.Loosened> loosened = new ArrayList<>();
    private final List<SafetyRule> rules;

    private StudySafetyReader(List<SafetyRule> bundled) {
        rules = new ArrayList<>(bundled);
    }

    /**
     * Reads the file.
     *
     * @param file name shown in problems
     * @param text the YAML
     * @param bundled the rules that come with coldproof
     * @throws Refused with every problem found
     */
    public static StudySafety read(String file, String text, List<SafetyRule> bundled) {
        StudySafetyReader reader = new StudySafetyReader(bundled);
        StudySafety safety = reader.safety(YamlForm.of(YamlTree.read(file, text), "the study's safety file", reader.problems));
        if (!reader.problems.isEmpty()) {
            throw new Refused(reader.problems);
        }
        return safety;
    }

    private StudySafety safety(YamlForm form) {
        List<String> devices = Arrays.stream(DeviceClass.values()).map(DeviceClass::word).toList();
        String device = form.word("device class", devices).orElse(DeviceClass.LAPTOP.word());
        Optional<Site> site = form.form("place").flatMap(this::site);
        SafetyScene known = known(form);
        changes(form, "tighten", true);
        changes(form, "loosen", false);
        if (form.has("rules")) {
            add(RulesReader.rulesOf(form, "this study", problems), form);
        }
        form.finish();
        return new StudySafety(rules, loosened, DeviceClass.of(device).orElseThrow(), site,
                known);
    }

    private Optional<Site> site(YamlForm place) {
        OptionalDouble latitude = degrees(place, "latitude", 90);
        OptionalDouble longitude = degrees(place, "longitude", 180);
        place.finish();
        return latitude.isPresent() && longitude.isPresent() ? Optional.of(new Site(latitude.getAsDouble(), longitude.getAsDouble())) : Optional.empty();
    }

    private OptionalDouble degrees(YamlForm place, String key, double most) {
        String text = place.text(key, "degrees, such as 47.61");
        try {
            double degrees = QuantityText.number(text);
            if (Math.abs(degrees) <= most) {
                return OptionalDouble.of(degrees);
            }
        } catch (QuantityText.Unreadable unreadable) {
            if (text.isEmpty()) {
                return OptionalDouble.empty();
            }
        }
        problems.add(Problem.of("`" + key + "` is \"" + text + "\"", place.placeOf(key), "degrees from -" + (int) most + " to " + (int) most
                + ", north and east positive", "Write such a number."));
        return OptionalDouble.empty();
    }

    private SafetyScene known(YamlForm form) {
        SafetyScene known = SafetyScene.NOTHING;
        for (Reading reading : THROUGHOUT) {
            Dimension dimension = reading.dimension().orElseThrow();
            OptionalDouble number = form.quantity(reading.word(), dimension);
            if (number.isEmpty()) {
                continue;
            }
            if (number.getAsDouble() >= reading.least() && number.getAsDouble() <= reading.most()) {
                known = known.with(reading, number.getAsDouble());
            } else {
                problems.add(Problem.of("`" + reading.word() + "` is out of range", form.placeOf(reading.word()), dimension.expected(), "Write such a value."));
            }
        }
        return known;
    }

    private void changes(YamlForm form, String key, boolean tighten) {
        Optional<YamlNode> node = form.node(key);
        if (node.isEmpty()) {
            return;
        }
        if (!(node.get() instanceof YamlNode.Sequence sequence)) {
            problems.add(Problem.of("`" + key + "` is " + node.get().kind(), node.get().place(), "a list of changes",
                    "Write such as: - {rule: below-storage-range, when: {air: below -10 °C}, reason: the maker's limit}"));
            return;
        }
        for (YamlNode item : sequence.items()) {
            change(YamlForm.of(item, "a change", problems), tighten);
        }
    }

    private void change(YamlForm form, boolean tighten) {
        int before = problems.size();
        String id = form.text("rule", "the name of a rule");
        Optional<SafetyLevel> level = form.word("level", SafetyLevel.words()).flatMap(SafetyLevel::of);
        RuleChange change = new RuleChange(level, RulesReader.conditions(form, problems));
        Optional<String> reason = form.optionalText("reason").filter(text -> !text.isBlank());
        form.finish();
        int at = position(id);
        if (at < 0 && !id.isEmpty()) {
            List<String> ids = rules.stream().map(SafetyRule::id).toList();
            problems.add(new Problem("there is no rule \"" + id + "\"", form.placeOf("rule"), "the name of a rule, as coldproof caution shows it",
                    NearestWord.of(id, ids), "Correct the name."));
        } else if (problems.size() == before) {
            apply(form, at, change, tighten, reason);
        }
    }

    private void apply(YamlForm form, int at, RuleChange change, boolean tighten, Optional<String> reason) {
        SafetyRule rule = rules.get(at);
        Place place = form.placeOf("rule");
        if (change.tightens(rule)) {
            rules.set(at, change.of(rule));
        } else if (tighten) {
            problems.add(Problem.of("this loosens the rule \"" + rule.id() + "\"", place, "a higher level, or conditions that hold whenever the rule's own do",
                    "Correct it, or move it below `loosen` with a reason."));
        } else if (!rule.mayBeSetAside()) {
            problems.add(Problem.of("the rule \"" + rule.id() + "\" cannot be loosened", place, "a rule that may be set aside", "Remove the change."));
        } else if (reason.isEmpty()) {
            problems.add(Problem.of("the rule \"" + rule.id() + "\" is loosened without a reason", place, "reason: why", "Add the reason; it is shown as a deviation."));
        } else {
            rules.set(at, change.of(rule));
            loosened.add(new StudySafety.Loosened(rule.id(), reason.get()));
        }
    }

    private int position(String id) {
        for (int i = 0; i < rules.size(); i++) {
            if (rules.get(i).id().equals(id)) {
                return i;
            }
        }
        return -1;
    }

    private void add(List<SafetyRule> more, YamlForm form) {
        for (SafetyRule rule : more) {
            if (position(rule.id()) >= 0) {
                problems.add(Problem.of("there is a rule \"" + rule.id() + "\" already", form.placeOf("rules"), "a name of its own",
                        "Rename it, or change that rule below `tighten`."));
            } else {
                rules.add(rule);
            }
        }
    }
}
