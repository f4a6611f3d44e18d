package coldproof.files.yaml;

import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tools.jackson.core.JacksonException;
import tools.jackson.core.JsonToken;
import tools.jackson.core.ObjectReadContext;
import tools.jackson.core.TokenStreamLocation;
import tools.jackson.dataformat.yaml.YAMLFactory;
import tools.jackson.dataformat.yaml.YAMLParser;

/** Reads YAML into {@link YamlNode}s. Aliases, anchors, tags, duplicate keys, a second document and anything huge are refused. */
public final class YamlTree {
    private static final int LARGEST_CHARACTERS = 1 << 20;
    private static final int DEEPEST = 32;

    private final String file;
    private final String[] lines;

    private YamlTree(String file, String text) {
        this.file = file;
        this.lines = text.replace("\r\n", "\n").replace('\r', '\n').split("\n", -1);
    }

    /**
     * Reads a whole text.
     *
     * @param file name shown in problems
     * @throws Refused with place, what was expected and a remedy, if the text is not such YAML
     */
    public static YamlNode read(String file, String text) {
        if (text.length() > LARGEST_CHARACTERS) {
            throw new Refused(Problem.of("the file has " + text.length() + " characters", Place.named(file),
                    "at most " + LARGEST_CHARACTERS, "Check that this is the right file."));
        }
        String body = text.startsWith("\ufeff") ? text.substring(1) : text;
        return new YamlTree(file, body).document(body);
    }

    private YamlNode document(String text) {
        try (YAMLParser parser = (YAMLParser) new YAMLFactory().createParser(ObjectReadContext.empty(), new WholeCharacters(text))) {
            if (parser.nextToken() == null) {
                throw refused("the file is empty", place(1, 1, 0), "a mapping of keys to values", "Fill it in, or start from a ready plan.");
            }
            YamlNode root = node(parser, 0);
            if (parser.nextToken() != null) {
                throw refused("a second document begins here", placeOf(parser, 0), "one document in a file", "Move it to a file of its own.");
            }
            return root;
        } catch (JacksonException broken) {
            TokenStreamLocation at = broken.getLocation();
            int line = at == null ? 1 : Math.max(1, at.getLineNr());
            int column = at == null ? 0 : Math.max(0, at.getColumnNr());
            throw refused("this is not YAML: " + firstSentence(broken.getOriginalMessage()), place(line, column, 1),
                    "YAML 1.2: `key: value`, blocks indented by spaces", "Correct the line, or the one above it.");
        }
    }

    private YamlNode node(YAMLParser parser, int depth) {
        Place place = placeOf(parser, 0);
        if (depth > DEEPEST) {
            throw refused("nested deeper than " + DEEPEST + " levels", place, "a plain file", "Check the indentation.");
        }
        if (parser.isCurrentAlias()) {
            throw refused("an alias (*name) is not allowed here", place, "the value itself", "Write the value out.");
        }
        if (parser.getObjectId() != null) {
            throw refused("an anchor (&name) is not allowed here", place, "the value itself", "Remove the &name.");
        }
        if (parser.getTypeId() != null) {
            throw refused("a tag (!" + parser.getTypeId() + ") is not allowed here", place, "a plain value", "Remove the tag.");
        }
        JsonToken token = parser.currentToken();
        if (token == JsonToken.START_OBJECT) {
            return mapping(parser, place, depth);
        }
        if (token == JsonToken.START_ARRAY) {
            List<YamlNode> items = new ArrayList<>();
            while (parser.nextToken() != JsonToken.END_ARRAY) {
                items.add(node(parser, depth + 1));
            }
            return new YamlNode.Sequence(items, place);
        }
        String scalar = token == JsonToken.VALUE_NULL ? wordForNothing(place) : parser.getString();
        return new YamlNode.Scalar(scalar, placeOf(parser, scalar.length()));
    }

    private YamlNode mapping(YAMLParser parser, Place place, int depth) {
        Map<String, YamlNode> entries = new LinkedHashMap<>();
        Map<String, Place> keyPlaces = new LinkedHashMap<>();
        while (parser.nextToken() != JsonToken.END_OBJECT) {
            String key = parser.currentName();
            Place keyPlace = placeOf(parser, key.length());
            if (entries.containsKey(key)) {
                throw refused("the key \"" + key + "\" stands twice", keyPlace,
                        "each key once (first at line " + keyPlaces.get(key).line() + ")", "Remove one of the two.");
            }
            parser.nextToken();
            entries.put(key, node(parser, depth + 1));
            keyPlaces.put(key, keyPlace);
        }
        return new YamlNode.Mapping(entries, keyPlaces, place);
    }

    /** Nothing written and the word "null" arrive as the same token; the line tells them apart. */
    private static String wordForNothing(Place place) {
        int start = Math.max(0, place.column() - 1);
        return place.excerpt().startsWith("null", start) ? "null" : "";
    }

    private Place placeOf(YAMLParser parser, int width) {
        TokenStreamLocation at = parser.currentTokenLocation();
        return place(at.getLineNr(), at.getColumnNr(), width);
    }

    private Place place(int line, int column, int width) {
        String excerpt = line >= 1 && line <= lines.length ? lines[line - 1] : "";
        return new Place(file, line, column, excerpt, width);
    }

    private static Refused refused(String what, Place where, String expected, String remedy) {
        return new Refused(Problem.of(what, where, expected, remedy));
    }

    private static String firstSentence(String message) {
        String line = message == null ? "it cannot be read" : message.strip();
        int end = line.indexOf('\n');
        return end < 0 ? line : line.substring(0, end).strip();
    }
}
