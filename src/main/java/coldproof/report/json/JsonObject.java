package coldproof.report.json;

import coldproof.quantity.Interval;
import java.io.StringWriter;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import tools.jackson.core.JsonGenerator;
import tools.jackson.core.ObjectWriteContext;
import tools.jackson.core.json.JsonFactory;

/** A JSON object being built, keys in the order put. Numbers that are NaN or infinite become null. Not thread-safe. */
public final class JsonObject {
    private final Map<String, Object> members = new LinkedHashMap<>();

    /** A number; null when it does not exist. */
    public JsonObject put(String key, double value) {
        members.put(key, value);
        return this;
    }

    /** A number that may be missing. */
    public JsonObject put(String key, OptionalDouble value) {
        members.put(key, value.isPresent() ? (Object) value.getAsDouble() : null);
        return this;
    }

    /** A whole number. */
    public JsonObject put(String key, long value) {
        members.put(key, value);
        return this;
    }

    /** A whole number. */
    public JsonObject put(String key, int value) {
        members.put(key, (long) value);
        return this;
    }

    /** True or false. */
    public JsonObject put(String key, boolean value) {
        members.put(key, value);
        return this;
    }

    /** A text. */
    public JsonObject put(String key, String value) {
        members.put(key, value);
        return this;
    }

    /** An object within. */
    public JsonObject put(String key, JsonObject value) {
        members.put(key, value);
        return this;
    }

    /** A list of texts, numbers, truth values, lists or {@link JsonObject}s. */
    public JsonObject put(String key, List<?> values) {
        members.put(key, List.copyOf(values));
        return this;
    }

    /** A value that may be missing: a text, a number, an object. */
    public JsonObject put(String key, Optional<?> value) {
        members.put(key, value.orElse(null));
        return this;
    }

    /** An interval as {@code {"level": .., "low": .., "high": ..}}. */
    public JsonObject put(String key, Interval interval) {
        return put(key, new JsonObject().put("level", interval.level()).put("low", interval.low()).put("high", interval.high()));
    }

    /** Null. */
    public JsonObject putNull(String key) {
        members.put(key, null);
        return this;
    }

    /** The members, in order. */
    public Map<String, Object> members() {
        return Collections.unmodifiableMap(members);
    }

    /** The document on one line, without a line end. */
    public String toText() {
        StringWriter text = new StringWriter();
        try (JsonGenerator out = new JsonFactory().createGenerator(ObjectWriteContext.empty(), text)) {
            write(out, this);
        }
        return text.toString();
    }

    private static void write(JsonGenerator out, Object value) {
        if (value == null) {
            out.writeNull();
        } else if (value instanceof JsonObject object) {
            out.writeStartObject();
            object.members.forEach((key, member) -> {
                out.writeName(key);
                write(out, member);
            });
            out.writeEndObject();
        } else if (value instanceof List<?> list) {
            out.writeStartArray();
            list.forEach(item -> write(out, item));
            out.writeEndArray();
        } else if (value instanceof Boolean truth) {
            out.writeBoolean(truth);
        } else if (value instanceof Long || value instanceof Integer) {
            out.writeNumber(((Number) value).longValue());
        } else if (value instanceof Double number) {
            writeNumber(out, number);
        } else {
            out.writeString(value.toString());
        }
    }

    private static void writeNumber(JsonGenerator out, double number) {
        if (Double.isFinite(number)) {
            out.writeNumber(number);
        } else {
            out.writeNull();
        }
    }
}
