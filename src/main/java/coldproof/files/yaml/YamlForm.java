package coldproof.files.yaml;

import coldproof.quantity.Dimension;
import coldproof.quantity.NearestWord;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.QuantityText;
import coldproof.quantity.QuantityText.Bare;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;

/**
 * Fills in a form from a mapping: asks for each key it knows, collects every problem with its place, and at {@link #finish} reports the keys
 * nobody asked for.
 */
public final class YamlForm {
    private final YamlNode.Mapping mapping;
    private final String name;
    private final List<Problem> problems;
    private final Set<String> asked = new LinkedHashSet<>();
    private final Map<String, Problem> lacking = new HashMap<>();

    /**
     * A form over a mapping.
     *
     * @param name what the mapping describes, as in "the plan" or "`metric`"
     * @param problems collects what is wrong; shared by the forms of a file
     */
    public YamlForm(YamlNode.Mapping mapping, String name, List<Problem> problems) {
        this.mapping = mapping;
        this.name = name;
        this.problems = problems;
    }

    /** The form of a node, or of an empty mapping with a problem when the node is none. */
    public static YamlForm of(YamlNode node, String name, List<Problem> problems) {
        if (node instanceof YamlNode.Mapping mapping) {
            return new YamlForm(mapping, name, problems);
        }
        problems.add(Problem.of(name + " is " + node.kind(), node.place(), "a mapping of keys to values",
                "Write `key: value` lines, indented, or {key: value, ...}."));
        return new YamlForm(new YamlNode.Mapping(Map.of(), Map.of(), node.place()), name, new ArrayList<>());
    }

    /** Where the mapping begins. */
    public Place place() {
        return mapping.place();
    }

    /** The keys written, in order. */
    public List<String> keys() {
        return List.copyOf(mapping.entries().keySet());
    }

    /** Whether the key is written. */
    public boolean has(String key) {
        asked.add(key);
        return mapping.entries().containsKey(key);
    }

    /** The node of a key, if written. */
    public Optional<YamlNode> node(String key) {
        asked.add(key);
        return Optional.ofNullable(mapping.entries().get(key));
    }

    /** Where the value of a key stands; the mapping itself when the key is missing. */
    public Place placeOf(String key) {
        YamlNode node = mapping.entries().get(key);
        return node == null ? mapping.place() : node.place();
    }

    /** Where a key stands; the mapping itself when it is missing. */
    public Place placeOfKey(String key) {
        return mapping.keyPlaces().getOrDefault(key, mapping.place());
    }

    /** A form over the mapping below a key, if written. */
    public Optional<YamlForm> form(String key) {
        Optional<YamlNode> node = node(key);
        return node.isPresent() ? Optional.of(of(node.get(), "`" + key + "`", problems)) : Optional.empty();
    }

    /** A text that must be there and not be blank. */
    public String text(String key, String example) {
        Optional<String> text = optionalText(key);
        if (text.isEmpty() || text.get().isBlank()) {
            missing(key, example);
            return "";
        }
        return text.get();
    }

    /** A text, if written. */
    public Optional<String> optionalText(String key) {
        Optional<YamlNode> node = node(key);
        if (node.isEmpty()) {
            return Optional.empty();
        }
        if (node.get() instanceof YamlNode.Scalar scalar) {
            return Optional.of(scalar.text());
        }
        problems.add(Problem.of("`" + key + "` is " + node.get().kind(), node.get().place(), "a single value", "Write one value."));
        return Optional.empty();
    }

    /** A word of a closed set, or empty with a problem naming the nearest. */
    public Optional<String> word(String key, Collection<String> valid) {
        Optional<String> text = optionalText(key);
        if (text.isPresent() && !valid.contains(text.get())) {
            wrongWord(text.get(), placeOf(key), "`" + key + "`", valid);
            return Optional.empty();
        }
        return text;
    }

    /** Reports a word that is not one of the valid ones. */
    public void wrongWord(String word, Place place, String what, Collection<String> valid) {
        problems.add(new Problem(what + " is \"" + word + "\"", place, "one of: " + String.join(", ", valid), NearestWord.of(word, valid),
                "Correct the word."));
    }

    /** A quantity with its unit, if written; empty with a problem if it cannot be read. */
    public OptionalDouble quantity(String key, Dimension dimension) {
        Optional<String> text = optionalText(key);
        if (text.isEmpty()) {
            return OptionalDouble.empty();
        }
        return quantityOf(text.get(), placeOf(key), "`" + key + "`", dimension);
    }

    /** Reads a quantity found somewhere. */
    public OptionalDouble quantityOf(String text, Place place, String what, Dimension dimension) {
        try {
            return OptionalDouble.of(QuantityText.read(text, dimension, Bare.REFUSED));
        } catch (QuantityText.Unreadable unreadable) {
            problems.add(Problem.of(what + " is \"" + text + "\", " + reason(unreadable.getMessage()), place, dimension.expected(),
                    "Write the number with its unit."));
            return OptionalDouble.empty();
        }
    }

    private static String reason(String message) {
        int colon = message.indexOf(": expected");
        return colon < 0 ? message : message.substring(0, colon);
    }

    /** A whole number of at least {@code smallest} and at most {@code largest}, if written. */
    public Optional<Integer> whole(String key, int smallest, int largest) {
        Optional<String> text = optionalText(key);
        return text.isPresent() ? wholeOf(text.get(), placeOf(key), "`" + key + "`", smallest, largest) : Optional.empty();
    }

    /** Reads a whole number found somewhere. */
    public Optional<Integer> wholeOf(String text, Place place, String what, int smallest, int largest) {
        OptionalInt number = QuantityText.whole(text.strip(), smallest, largest);
        if (number.isPresent()) {
            return Optional.of(number.getAsInt());
        }
        problems.add(Problem.of(what + " is \"" + text + "\"", place, "a whole number from " + smallest + " to " + largest,
                "Write such a number."));
        return Optional.empty();
    }

    /** The single values of a list or the one value in its place, with their places. */
    public Map<String, Place> words(String key) {
        Map<String, Place> words = new LinkedHashMap<>();
        Optional<YamlNode> node = node(key);
        if (node.isEmpty()) {
            return words;
        }
        List<YamlNode> items = node.get() instanceof YamlNode.Sequence sequence ? sequence.items() : List.of(node.get());
        for (YamlNode item : items) {
            if (!(item instanceof YamlNode.Scalar scalar)) {
                problems.add(Problem.of("an item of `" + key + "` is " + item.kind(), item.place(), "a single value", "Write one value an item."));
            } else if (words.putIfAbsent(scalar.text(), scalar.place()) != null) {
                problems.add(Problem.of("\"" + scalar.text() + "\" stands twice in `" + key + "`", scalar.place(), "each once", "Remove one."));
            }
        }
        return words;
    }

    /** Reports a key that must be there. */
    public void missing(String key, String example) {
        Problem problem = Problem.of(name + " lacks `" + key + "`", has(key) ? placeOfKey(key) : mapping.place(), example, "Add the line `" + key + ": ...`.");
        problems.add(problem);
        lacking.put(key, problem);
    }

    /** Adds a problem. */
    public void problem(Problem problem) {
        problems.add(problem);
    }

    /** Reports every key nobody asked for. */
    public void finish() {
        for (String key : mapping.entries().keySet()) {
            if (!asked.contains(key)) {
                List<String> nearest = NearestWord.of(key, asked);
                nearest.stream().map(lacking::get).filter(Objects::nonNull).forEach(problems::remove); // mistyped, not missing: one mistake, one problem
                problems.add(new Problem("unknown key \"" + key + "\" in " + name, mapping.keyPlaces().get(key),
                        "one of: " + String.join(", ", asked), nearest, "Correct or remove the key."));
            }
        }
    }
}
