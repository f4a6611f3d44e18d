package coldproof.study;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Range checks and defensive copies of the records of this room; every refusal names argument, value and range. */
final class Values {
    private Values() {}

    static void present(String name, Object value) {
        if (value == null) {
            throw new IllegalArgumentException(name + " is missing");
        }
    }

    /** Text that may be empty. */
    static void text(String name, String value) {
        present(name, value);
    }

    /** Text that says something. */
    static void word(String name, String value) {
        present(name, value);
        if (value.isBlank()) {
            throw new IllegalArgumentException(name + " is blank");
        }
    }

    private static boolean isNoWord(String value) {
        return value == null || value.isBlank();
    }

    static void atLeast(String name, long value, long least) {
        if (value < least) {
            throw new IllegalArgumentException(name + " " + value + " is below " + least);
        }
    }

    static void finite(String name, double value) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException(name + " " + value + " is not a finite number");
        }
    }

    static void notNegative(String name, double value) {
        if (!(value >= 0 && value < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(name + " " + value + " is outside [0, infinity)");
        }
    }

    /** A relative path with forward slashes that stays inside the study folder: what a journal names is opened on another's computer. */
    static void insideFolder(String name, String path) {
        word(name, path);
        boolean leaves = path.startsWith("/") || path.indexOf('\\') >= 0 || path.indexOf(':') >= 0 || path.indexOf('\0') >= 0
                || ("/" + path + "/").contains("/../");
        if (leaves) {
            throw new IllegalArgumentException(name + " \"" + path + "\" is not a relative path inside the study folder");
        }
    }

    static List<Double> finite(String name, List<Double> values) {
        for (Double value : values) {
            finite(name, value);
        }
        return List.copyOf(values);
    }

    /** An unmodifiable copy in the order given; keys are words, no value is null. */
    static <V> Map<String, V> ordered(String name, Map<String, V> values) {
        Map<String, V> copy = new LinkedHashMap<>(values);
        for (Map.Entry<String, V> each : copy.entrySet()) {
            if (isNoWord(each.getKey())) { // asked first: long journals would make a message for every entry
                word("a key of " + name, each.getKey());
            }
            if (each.getValue() == null) {
                present(name + "." + each.getKey(), null);
            }
        }
        return Collections.unmodifiableMap(copy);
    }

    /** Levels by factor, in the order given. */
    static Map<String, String> levels(Map<String, String> levels) {
        Map<String, String> copy = ordered("levels", levels);
        for (Map.Entry<String, String> each : copy.entrySet()) {
            if (isNoWord(each.getValue())) {
                word("the level of " + each.getKey(), each.getValue());
            }
        }
        return copy;
    }
}
