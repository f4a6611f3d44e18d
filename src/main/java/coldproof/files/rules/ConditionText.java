package coldproof.files.rules;

import coldproof.files.yaml.YamlForm;
import coldproof.quantity.Dimension;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.reason.safety.Condition;
import coldproof.reason.safety.Reading;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Reads what a rule asks of a reading: {@code below 3 K}, {@code at least 0 °C and below 10 °C}, {@code snow or rain}.
 */
final class ConditionText {
    private static final List<String> COMPARISONS = List.of("below", "at most", "above", "at least");

    private final YamlForm form;
    private final Reading reading;
    private final Place place;

    private ConditionText(YamlForm form, Reading reading, Place place) {
        this.form = form;
        this.reading = reading;
        this.place = place;
    }

    /** The condition, or empty with a problem in the form. */
    static Optional<Condition> read(YamlForm form, Reading reading, String text, Place place) {
        ConditionText words = new ConditionText(form, reading, place);
        return reading.dimension().isPresent() ? words.range(text, reading.dimension().get()) : words.oneOf(text);
    }

    private Optional<Condition> oneOf(String text) {
        List<String> words = Arrays.stream(text.split(" or ")).map(String::strip).toList();
        for (String word : words) {
            if (!reading.words().contains(word)) {
                form.wrongWord(word, place, "`" + reading.word() + "`", reading.words());
                return Optional.empty();
            }
        }
        return Optional.of(new Condition.OneOf(reading, words));
    }

    private Optional<Condition> range(String text, Dimension dimension) {
        double low = Double.NEGATIVE_INFINITY;
        double high = Double.POSITIVE_INFINITY;
        boolean lowIncluded = false;
        boolean highIncluded = false;
        for (String part : text.split(" and ")) {
            String comparison = COMPARISONS.stream().filter(word -> part.strip().startsWith(word + " ")).findFirst().orElse("");
            if (comparison.isEmpty()) {
                return wrong(text);
            }
            OptionalDouble number = form.quantityOf(part.strip().substring(comparison.length()).strip(), place, "`" + reading.word() + "`", dimension);
            if (number.isEmpty()) {
                return Optional.empty();
            }
            if (comparison.equals("below") || comparison.equals("at most")) {
                high = number.getAsDouble();
                highIncluded = comparison.equals("at most");
            } else {
                low = number.getAsDouble();
                lowIncluded = comparison.equals("at least");
            }
        }
        return low < high ? Optional.of(new Condition.Range(reading, low, lowIncluded, high, highIncluded)) : wrong(text);
    }

    private Optional<Condition> wrong(String text) {
        form.problem(Problem.of("`" + reading.word() + "` is \"" + text + "\", which is no range", place,
                "below, at most, above or at least with a quantity; two of them joined by \"and\"", "Write such as: at least 0 °C and below 10 °C"));
        return Optional.empty();
    }
}
