package coldproof.reason.safety;

import java.util.OptionalDouble;

/**
 * What a reading showed: a number in its dimension's own unit, or a word.
 *
 * @param number the number; empty for a word
 * @param word the word; empty for a number
 */
public record Value(OptionalDouble number, String word) {
    /** Refuses NaN, infinity, and a value that is both or neither. */
    public Value {
        if (number.isPresent() != word.isEmpty()) {
            throw new IllegalArgumentException("a value is a number or a word, not " + number + " and \"" + word + "\"");
        }
        if (number.isPresent() && !Double.isFinite(number.getAsDouble())) {
            throw new IllegalArgumentException("a reading must be finite, not " + number.getAsDouble());
        }
    }

    /** A number. */
    public static Value of(double number) {
        return new Value(OptionalDouble.of(number), "");
    }

    /** A word. */
    public static Value of(String word) {
        return new Value(OptionalDouble.empty(), word);
    }
}
