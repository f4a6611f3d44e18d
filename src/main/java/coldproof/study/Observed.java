package coldproof.study;

import java.util.OptionalDouble;

/**
 * One reading taken at the bench: an amount with its unit, or a word ("wall"), and who or what read it.
 *
 * @param amount the number read; empty when the reading is a word
 * @param unit the unit of the amount as written, such as {@code °C}; may be empty (a count); empty with a word
 * @param word the word read; empty with an amount
 * @param sensor the sensor of the computer that showed it; empty when a person gave it, and in journals of before sensors were asked
 */
public record Observed(OptionalDouble amount, String unit, String word, String sensor) {
    /** Refuses a reading that is both or neither, and an amount that is not finite. */
    public Observed {
        Values.present("amount", amount);
        Values.text("unit", unit);
        Values.text("word", word);
        Values.text("sensor", sensor);
        if (amount.isPresent()) {
            Values.finite("amount", amount.getAsDouble());
        }
        if (amount.isPresent() != word.isEmpty() || (amount.isEmpty() && !unit.isEmpty())) {
            throw new IllegalArgumentException("a reading is an amount with a unit, or a word; got " + amount + " and \"" + word + "\"");
        }
    }

    /** An amount with its unit. */
    public static Observed of(double amount, String unit) {
        return new Observed(OptionalDouble.of(amount), unit, "", "");
    }

    /** A word. */
    public static Observed of(String word) {
        return new Observed(OptionalDouble.empty(), "", word, "");
    }

    /** The same as shown by a sensor. */
    public Observed by(String shownBy) {
        return new Observed(amount, unit, word, shownBy);
    }
}
