package coldproof.files.yaml;

import coldproof.quantity.Place;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A piece of a YAML text with its place. */
public sealed interface YamlNode {
    /** Where it begins. */
    Place place();

    /** What it is, in the words of the person: a text, a mapping, a list. */
    String kind();

    /**
     * A single value, as written.
     *
     * @param text the characters, unquoted; empty where nothing was written
     * @param place where it begins
     */
    record Scalar(String text, Place place) implements YamlNode {
        @Override
        public String kind() {
            return "a single value";
        }
    }

    /**
     * Keys and values, in the order written, each key once.
     *
     * @param entries the values by key
     * @param keyPlaces where each key stands
     * @param place where the mapping begins
     */
    record Mapping(Map<String, YamlNode> entries, Map<String, Place> keyPlaces, Place place) implements YamlNode {
        /** Copies, keeping the order. */
        public Mapping {
            entries = Collections.unmodifiableMap(new LinkedHashMap<>(entries));
            keyPlaces = Collections.unmodifiableMap(new LinkedHashMap<>(keyPlaces));
        }

        @Override
        public String kind() {
            return "a mapping of keys to values";
        }
    }

    /**
     * Values in order.
     *
     * @param items the values
     * @param place where the list begins
     */
    record Sequence(List<YamlNode> items, Place place) implements YamlNode {
        /** Copies. */
        public Sequence {
            items = List.copyOf(items);
        }

        @Override
        public String kind() {
            return "a list";
        }
    }
}
