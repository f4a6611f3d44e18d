package coldproof.files.journal;

import coldproof.study.Observed;
import java.time.DateTimeException;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;

/**
 * The fields of any JSON object, in their order. Values are text, {@code Long}, {@code Double}, {@code Boolean}, list, map or
 * {@code Optional.empty()} for null.
 */
final class JsonFields extends Fields {
    private static final int DEEPEST = 20;
    private final Map<String, Object> values;

    private JsonFields(Map<String, Object> values) {
        this.values = values;
    }

    /** The parser stands at the start of an object; afterwards at its end. */
    static JsonFields of(JsonParser parser) {
        return new JsonFields(object(parser, 0));
    }

    /** The same, but the object under {@code apart} is read by someone else, who leaves the parser at its end. */
    static JsonFields of(JsonParser parser, String apart, Runnable readApart) {
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
        return new JsonFields(values);
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

    @Override
    boolean has(String key) {
        return values.containsKey(key);
    }

    private Object needed(String key) {
        Object value = values.get(key);
        if (value == null) {
            throw new IllegalArgumentException("the field \"" + key + "\" is missing");
        }
        return value;
    }

    @Override
    String text(String key) {
        Object value = needed(key);
        if (value instanceof String text) {
            return text;
        }
        throw wrong(key, value, "text");
    }

    @Override
    double number(String key) {
        return number(key, needed(key));
    }

    private static double number(String key, Object value) {
        if (value instanceof Number number) {
            return number.doubleValue();
        }
        throw wrong(key, value, "a number");
    }

    @Override
    long whole(String key) {
        Object value = needed(key);
        if (value instanceof Long whole) {
            return whole;
        }
        throw wrong(key, value, "a whole number");
    }

    @Override
    OffsetDateTime time(String key) {
        String text = text(key);
        try {
            return OffsetDateTime.parse(text);
        } catch (DateTimeException e) {
            throw new IllegalArgumentException("the field \"" + key + "\" is \"" + text + "\", expected a time with its offset", e);
        }
    }

    @Override
    List<Double> numbers(String key) {
        List<Double> numbers = new ArrayList<>();
        for (Object value : list(key)) {
            numbers.add(number(key, value));
        }
        return numbers;
    }

    @Override
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

    @Override
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

    @Override
    Map<String, Observed> readings(String key) {
        Map<String, Observed> readings = new LinkedHashMap<>();
        JsonFields object = object(key);
        for (String name : object.values.keySet()) {
            readings.put(name, object.object(name).reading());
        }
        return readings;
    }

    private JsonFields object(String key) {
        Object value = needed(key);
        if (!(value instanceof Map<?, ?> map)) {
            throw wrong(key, value, "an object");
        }
        Map<String, Object> copy = new LinkedHashMap<>();
        map.forEach((name, each) -> copy.put((String) name, each));
        return new JsonFields(copy);
    }
}
