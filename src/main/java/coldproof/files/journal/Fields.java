package coldproof.files.journal;

import coldproof.quantity.ConstantWord;
import coldproof.study.Observed;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;

/**
 * The fields of one object, asked for by name. Every refusal is an {@code IllegalArgumentException} that names the field; {@link Line} turns
 * it into a damage of that line. Fields not asked for are left alone: a newer version may have written them.
 */
abstract class Fields {
    abstract boolean has(String key);

    abstract String text(String key);

    abstract double number(String key);

    abstract long whole(String key);

    abstract OffsetDateTime time(String key);

    abstract List<Double> numbers(String key);

    abstract List<String> texts(String key);

    /** Words by name, in their order. */
    abstract Map<String, String> words(String key);

    /** Readings by name, in their order. */
    abstract Map<String, Observed> readings(String key);

    Optional<String> perhapsText(String key) {
        return has(key) ? Optional.of(text(key)) : Optional.empty();
    }

    int count(String key) {
        long whole = whole(key);
        if (whole != (int) whole) {
            throw wrong(key, whole, "a whole number below 2147483648");
        }
        return (int) whole;
    }

    OptionalInt perhapsCount(String key) {
        return has(key) ? OptionalInt.of(count(key)) : OptionalInt.empty();
    }

    OptionalLong perhapsWhole(String key) {
        return has(key) ? OptionalLong.of(whole(key)) : OptionalLong.empty();
    }

    /** Empty when the field is not there. */
    List<Double> perhapsNumbers(String key) {
        return has(key) ? numbers(key) : List.of();
    }

    /** A reading taken at the bench, whose fields these are. */
    Observed reading() {
        Observed observed = has("word") ? Observed.of(text("word")) : Observed.of(number("amount"), text("unit"));
        return has("sensor") ? observed.by(text("sensor")) : observed;
    }

    /** The constant whose lower-case name stands in the field. */
    <E extends Enum<E>> E choice(String key, Class<E> choices) {
        String text = text(key);
        for (E choice : choices.getEnumConstants()) {
            if (ConstantWord.is(choice, text)) {
                return choice;
            }
        }
        throw wrong(key, text, "one of the known words");
    }

    static IllegalArgumentException wrong(String key, Object value, String expected) {
        return new IllegalArgumentException("the field \"" + key + "\" is " + value + ", expected " + expected);
    }
}
