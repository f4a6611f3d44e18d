package coldproof.files.journal;

import coldproof.study.Observed;
import java.util.List;
import java.util.Map;

/**
 * Writes one JSON object (RFC 8259) with keys in the order given: the same values give the same bytes on every version. Control characters,
 * those of the C1 block, line separators, direction marks and lone surrogates are written as escapes, so that showing a journal in a
 * terminal cannot do harm.
 */
final class JsonText {
    private static final char[] HEX = "0123456789abcdef".toCharArray();
    private final StringBuilder out;
    private boolean first = true;

    JsonText(StringBuilder out) {
        this.out = out.append('{');
    }

    JsonText text(String key, String value) {
        key(key);
        quote(value);
        return this;
    }

    JsonText whole(String key, long value) {
        key(key);
        out.append(value);
        return this;
    }

    JsonText number(String key, double value) {
        key(key);
        out.append(value);
        return this;
    }

    JsonText numbers(String key, List<Double> values) {
        key(key);
        out.append('[');
        for (int i = 0; i < values.size(); i++) {
            out.append(i == 0 ? "" : ",").append(values.get(i).doubleValue());
        }
        out.append(']');
        return this;
    }

    JsonText texts(String key, List<String> values) {
        key(key);
        out.append('[');
        for (int i = 0; i < values.size(); i++) {
            out.append(i == 0 ? "" : ",");
            quote(values.get(i));
        }
        out.append(']');
        return this;
    }

    JsonText words(String key, Map<String, String> words) {
        key(key);
        JsonText inner = new JsonText(out);
        words.forEach(inner::text);
        inner.end();
        return this;
    }

    JsonText readings(String key, Map<String, Observed> readings) {
        key(key);
        JsonText inner = new JsonText(out);
        readings.forEach(inner::reading);
        inner.end();
        return this;
    }

    private void reading(String key, Observed reading) {
        key(key);
        JsonText inner = new JsonText(out);
        if (reading.amount().isPresent()) {
            inner.number("amount", reading.amount().getAsDouble()).text("unit", reading.unit());
        } else {
            inner.text("word", reading.word());
        }
        if (!reading.sensor().isEmpty()) {
            inner.text("sensor", reading.sensor());
        }
        inner.end();
    }

    void end() {
        out.append('}');
    }

    private void key(String key) {
        if (!first) {
            out.append(',');
        }
        first = false;
        quote(key);
        out.append(':');
    }

    private void quote(String value) {
        out.append('"');
        for (int i = 0; i < value.length(); i++) {
            char c = value.charAt(i);
            if (c == '"' || c == '\\') {
                out.append('\\').append(c);
            } else if (c == '\n') {
                out.append("\\n");
            } else if (c >= 0x20 && c < 0x7f) {
                out.append(c);
            } else if (Character.isHighSurrogate(c) && i + 1 < value.length() && Character.isLowSurrogate(value.charAt(i + 1))) {
                out.append(c).append(value.charAt(++i));
            } else if (isHarmful(c)) {
                escape(c);
            } else {
                out.append(c);
            }
        }
        out.append('"');
    }

    /** Everything that could steer a terminal or turn the reading direction, and halves of a pair that UTF-8 cannot carry. */
    private static boolean isHarmful(char c) {
        int type = Character.getType(c);
        return type == Character.CONTROL || type == Character.FORMAT || type == Character.LINE_SEPARATOR
                || type == Character.PARAGRAPH_SEPARATOR || type == Character.SURROGATE;
    }

    private void escape(char c) {
        out.append("\\u").append(HEX[c >> 12]).append(HEX[c >> 8 & 15]).append(HEX[c >> 4 & 15]).append(HEX[c & 15]);
    }
}
