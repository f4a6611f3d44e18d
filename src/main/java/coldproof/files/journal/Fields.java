package coldproof.files.journal;

import coldproof.study.Observed;
import java.time.DateTimeException;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;

/**
 * The fields of one JSON object, in their order. Values are text, {@code Long}, {@code Double}, {@code Boolean}, list, map or
 * {@code Optional.empty()} for null. Every refusal is an {@code IllegalArgumentException} that names the field; {@link Line} turns it into
 * a damage of that line. Fields not asked for are left alone: a newer version may have written them.
 */
final class Fields {
    private static final int DEEPEST = 20;
    private final Map<String, Object> values;

    private Fields(Map<String, Object> values) {
        this.values = values;
    }

    /** The parser stands at the start of an object; afterwards at its end. */
    static Fields of(JsonParser parser) {
        return new Fields(object(parser, 0));
    }

    /** The same, but the object under {@code apart} is read by someone else, who leaves the parser at its end. */
    static Fields of(JsonParser parser, String apart, Runnable readApart) {
        Map<String, Object> values = new LinkedHashMap<>();
        while (parser.nextToken() != JsonToken.END_OBJECT) {
            String key = parser.currentName();
            Object value = Optional.empty();
            if (parser.nextToken() == JsonToken.START_OBJECT && key.equals(apart)) {
                readApart.run();
            } else {
                value = value(parser, 0);
            }
            put(values, key, value);
        }
        return new Fields(values);
    }

    private static void put(Map<String, Object> values, String key, Object value) {
        if (values.put(key, value) != null) {
            throw new IllegalArgumentException("the field \"" + key + "\" stands twice");
        }
    }

    private static Map<String, Object> object(JsonParser parser, int depth) {
        Map<String, Object> values = new LinkedHashMap<>();
        while (parser.nextToken() != JsonToken.END_OBJECT) {
            String key = parser.currentName();
            parser.nextToken();
            put(values, key, value(parser, depth));
        }
        return values;
    }

    private static Object value(JsonParser parser, int depth) {
        if (depth > DEEPEST) {
            throw new IllegalArgumentException("nested more than " + DEEPEST + " deep");
        }
        return switch (parser.currentToken()) {
            case VALUE_STRING -> parser.getString();
            case VALUE_NUMBER_INT -> isLong(parser) ? (Object) parser.getLongValue() : (Object) parser.getDoubleValue();
            case VALUE_NUMBER_FLOAT -> parser.getDoubleValue();
            case VALUE_TRUE -> Boolean.TRUE;
            case VALUE_FALSE -> Boolean.FALSE;
            case VALUE_NULL -> Optional.empty();
            case START_OBJECT -> object(parser, depth + 1);
            case START_ARRAY -> array(parser, depth + 1);
            default -> throw new IllegalArgumentException("not a value: " + parser.currentToken());
        };
    }

    private static boolean isLong(JsonParser parser) {
        JsonParser.NumberType type = parser.getNumberType();
        return type == JsonParser.NumberType.INT || type == JsonParser.NumberType.LONG;
    }

    private static List<Object> array(JsonParser parser, int depth) {
        List<Object> values = new ArrayList<>();
        while (parser.nextToken() != JsonToken.END_ARRAY) {
            values.add(value(parser, depth));
        }
        return values;
    }

    private Object needed(String key) {
        Object value = values.get(key);
        if (value == null) {
            throw new IllegalArgumentException("the field \"" + key + "\" is missing");
        }
        return value;
    }

    private static IllegalArgumentException wrong(String key, Object value, String expected) {
        return new IllegalArgumentException("the field \"" + key + "\" is " + value + ", expected " + expected);
    }

    String text(String key) {
        Object value = needed(key);
        if (value instanceof String text) {
            return text;
        }
        throw wrong(key, value, "text");
    }

    Optional<String> perhapsText(String key) {
        return values.containsKey(key) ? Optional.of(text(key)) : Optional.empty();
    }

    double number(String key) {
        return number(key, needed(key));
    }

    private static double number(String key, Object value) {
        if (value instanceof Number number) {
            return number.doubleValue();
        }
        throw wrong(key, value, "a number");
    }

    long whole(String key) {
        Object value = needed(key);
        if (value instanceof Long whole) {
            return whole;
        }
        throw wrong(key, value, "a whole number");
    }

    int count(String key) {
        long whole = whole(key);
        if (whole != (int) whole) {
            throw wrong(key, whole, "a whole number below 2147483648");
        }
        return (int) whole;
    }

    OptionalInt perhapsCount(String key) {
        return values.containsKey(key) ? OptionalInt.of(count(key)) : OptionalInt.empty();
    }

    OptionalLong perhapsWhole(String key) {
        return values.containsKey(key) ? OptionalLong.of(whole(key)) : OptionalLong.empty();
    }

    OffsetDateTime time(String key) {
        String text = text(key);
        try {
            return OffsetDateTime.parse(text);
        } catch (DateTimeException e) {
            throw new IllegalArgumentException("the field \"" + key + "\" is \"" + text + "\", expected a time with its offset", e);
        }
    }

    /** The constant whose lower-case name stands in the field. */
    <E extends Enum<E>> E choice(String key, Class<E> choices) {
        String text = text(key);
        for (E choice : choices.getEnumConstants()) {
            if (JournalWords.of(choice).equals(text)) {
                return choice;
            }
        }
        throw wrong(key, text, "one of the known words");
    }

    List<Double> numbers(String key) {
        List<Double> numbers = new ArrayList<>();
        for (Object value : list(key)) {
            numbers.add(number(key, value));
        }
        return numbers;
    }

    /** Empty when the field is not there. */
    List<Double> perhapsNumbers(String key) {
        return values.containsKey(key) ? numbers(key) : List.of();
    }

    List<String> texts(String key) {
        List<String> texts = new ArrayList<>();
        for (Object value : list(key)) {
            if (!(value instanceof String text)) {
                throw wrong(key, value, "text");
            }
            texts.add(text);
        }
        return texts;
    }

    private List<?> list(String key) {
        Object value = needed(key);
        if (value instanceof List<?> list) {
            return list;
        }
        throw wrong(key, value, "a list");
    }

    Map<String, String> words(String key) {
        Map<String, String> words = new LinkedHashMap<>();
        object(key).values.forEach((name, value) -> {
            if (!(value instanceof String text)) {
                throw wrong(key + "." + name, value, "a word");
            }
            words.put(name, text);
        });
        return words;
    }

    Map<String, Observed> readings(String key) {
        Map<String, Observed> readings = new LinkedHashMap<>();
        Fields object = object(key);
        for (String name : object.values.keySet()) {
            Fields reading = object.object(name);
            Observed observed = reading.values.containsKey("word") ? Observed.of(reading.text("word"))
                    : Observed.of(reading.number("amount"), reading.text("unit"));
            readings.put(name, reading.values.containsKey("sensor") ? observed.by(reading.text("sensor")) : observed);
        }
        return readings;
    }

    private Fields object(String key) {
        Object value = needed(key);
        if (!(value instanceof Map<?, ?> map)) {
            throw wrong(key, value, "an object");
        }
        Map<String, Object> copy = new LinkedHashMap<>();
        map.forEach((name, each) -> copy.put((String) name, each));
        return new Fields(copy);
    }
}
