package coldproof.reason.safety;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What is known of weather, room, device and person: readings that were taken. What is not known is simply not there.
 *
 * @param values by reading; none of them derived
 */
public record SafetyScene(Map<Reading, Value> values) {
    /** Nothing is known. */
    public static final SafetyScene NOTHING = new SafetyScene(Map.of());

    /** Copies; refuses derived readings and values out of range. */
    public SafetyScene {
        EnumMap<Reading, Value> copy = new EnumMap<>(Reading.class);
        values.forEach((reading, value) -> {
            check(reading, value);
            copy.put(reading, value);
        });
        values = Collections.unmodifiableMap(copy);
    }

    private static void check(Reading reading, Value value) {
        if (reading.derived()) {
            throw new IllegalArgumentException(reading.word() + " follows from other readings and cannot be given");
        }
        if (reading.dimension().isEmpty()) {
            if (!reading.words().contains(value.word())) {
                throw new IllegalArgumentException(reading.word() + " \"" + value.word() + "\" is none of " + reading.words());
            }
            return;
        }
        double number = value.number().orElse(Double.NaN);
        if (!(number >= reading.least() && number <= reading.most())) {
            String unit = reading.dimension().get().unit();
            throw new IllegalArgumentException(reading.word() + " " + number + " " + unit + " is outside [" + reading.least() + ", "
                    + reading.most() + "] " + unit);
        }
    }

    /**
     * The same with one more reading, or another value of it.
     *
     * @throws IllegalArgumentException if the number is NaN or outside the reading's range
     */
    public SafetyScene with(Reading reading, double number) {
        if (!Double.isFinite(number)) {
            throw new IllegalArgumentException(reading.word() + " " + number + " is not a finite number");
        }
        return with(reading, Value.of(number));
    }

    /**
     * The same with one more reading, or another word of it.
     *
     * @throws IllegalArgumentException if it is none of the reading's words
     */
    public SafetyScene with(Reading reading, String word) {
        return with(reading, Value.of(word));
    }

    private SafetyScene with(Reading reading, Value value) {
        Map<Reading, Value> more = new EnumMap<>(Reading.class);
        more.putAll(values);
        more.put(reading, value);
        return new SafetyScene(more);
    }

    /** The same with what another scene knows laid over it. */
    public SafetyScene overlaidBy(SafetyScene newer) {
        Map<Reading, Value> more = new EnumMap<>(Reading.class);
        more.putAll(values);
        more.putAll(newer.values);
        return new SafetyScene(more);
    }

    /** The number of a reading, where it was taken. */
    public OptionalDouble number(Reading reading) {
        Value value = values.get(reading);
        return value == null ? OptionalDouble.empty() : value.number();
    }

    /** The word of a reading, where it was taken. */
    public Optional<String> word(Reading reading) {
        return Optional.ofNullable(values.get(reading)).map(Value::word);
    }

    /** Whether a reading was taken and is this word. */
    public boolean is(Reading reading, String word) {
        return word(reading).filter(word::equals).isPresent();
    }
}
