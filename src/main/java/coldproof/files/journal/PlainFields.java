package coldproof.files.journal;

import coldproof.study.Observed;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The fields of an object in the form of {@link PlainText}. Used anew for object after object; a value is read when it is asked for. Every
 * refusal means no more than that the general reader is to look.
 */
final class PlainFields extends Fields {
    private static final int MOST = 30; // more fields than any object of this version has, and one bit of an int each
    private final PlainText text;
    private final String[] keys = new String[MOST];
    private final int[] from = new int[MOST];
    private final int[] to = new int[MOST];
    private int size;
    private int asked;
    private int next;
    private int expected; // keys of the object before, all different, which most likely stand here again

    PlainFields(PlainText text) {
        this.text = text;
    }

    /** Finds the fields of the object that stands here, and returns the place after it. */
    int take(int place) {
        return take(place, null, this);
    }

    /** The same; the object under one key, null for none, is taken by other fields at once, so that its bytes are gone over once. */
    int take(int place, String apart, PlainFields fieldsApart) {
        int known = expected;
        expected = 0;
        boolean repeated = true;
        size = 0;
        asked = 0;
        next = 0;
        int at = text.over('{', place);
        if (text.at(at) == '}') {
            return at + 1;
        }
        while (true) {
            if (size == MOST) {
                throw new NotPlain("too many fields");
            }
            int afterKey = size < known ? text.after(keys[size], at) : -1;
            if (afterKey < 0) {
                repeated = false;
                afterKey = text.afterValue(at);
                keys[size] = text.text(at, afterKey).intern(); // the names asked for are interned too, which makes comparing them quick
            }
            from[size] = text.over(':', afterKey);
            to[size] = keys[size].equals(apart) ? fieldsApart.take(from[size]) : text.afterValue(from[size]);
            at = to[size];
            size++;
            if (text.at(at) != ',') {
                if (!repeated) {
                    refuseRepeats();
                }
                expected = size;
                return text.over('}', at);
            }
            at++;
        }
    }

    private void refuseRepeats() {
        for (int i = 1; i < size; i++) {
            for (int j = 0; j < i; j++) {
                if (keys[i].equals(keys[j])) {
                    throw new NotPlain("a field twice");
                }
            }
        }
    }

    /** Refuses fields that nobody asked for: a newer version wrote them. */
    void refuseMore() {
        if (asked != (1 << size) - 1) {
            throw new NotPlain("more fields");
        }
    }

    private int find(String key) {
        if (next < size && keys[next].equals(key)) {
            return next; // fields are mostly asked for in their order
        }
        for (int i = 0; i < size; i++) {
            if (keys[i].equals(key)) {
                return i;
            }
        }
        return -1;
    }

    private int needed(String key) {
        int field = find(key);
        if (field < 0) {
            throw new NotPlain("a field is missing");
        }
        asked |= 1 << field;
        next = field + 1;
        return field;
    }

    /** Lets a field be that is read elsewhere. */
    void leave(String key) {
        needed(key);
    }

    @Override
    boolean has(String key) {
        return find(key) >= 0;
    }

    @Override
    String text(String key) {
        int field = needed(key);
        return text.text(from[field], to[field]);
    }

    @Override
    double number(String key) {
        int field = needed(key);
        return text.number(from[field], to[field]);
    }

    @Override
    long whole(String key) {
        int field = needed(key);
        return text.whole(from[field], to[field]);
    }

    @Override
    OffsetDateTime time(String key) {
        int field = needed(key);
        return text.time(from[field], to[field]);
    }

    @Override
    List<Double> numbers(String key) {
        return list(key, text::number);
    }

    @Override
    List<String> texts(String key) {
        return list(key, text::text);
    }

    private <T> List<T> list(String key, Value<T> value) {
        int field = needed(key);
        List<T> list = new ArrayList<>();
        int at = text.over('[', from[field]);
        while (text.at(at) != ']') {
            at = list.isEmpty() ? at : text.over(',', at);
            int after = text.afterValue(at);
            list.add(value.read(at, after));
            at = after;
        }
        return list;
    }

    @Override
    Map<String, String> words(String key) {
        PlainFields inner = object(key);
        Map<String, String> words = new LinkedHashMap<>();
        for (int i = 0; i < inner.size; i++) {
            words.put(inner.keys[i], text.text(inner.from[i], inner.to[i]));
        }
        return words;
    }

    @Override
    Map<String, Observed> readings(String key) {
        PlainFields inner = object(key);
        Map<String, Observed> readings = new LinkedHashMap<>();
        for (int i = 0; i < inner.size; i++) {
            PlainFields reading = inner.object(inner.keys[i]);
            readings.put(inner.keys[i], reading.reading());
            reading.refuseMore();
        }
        return readings;
    }

    private PlainFields object(String key) {
        int field = needed(key);
        PlainFields inner = new PlainFields(text);
        inner.take(from[field]);
        return inner;
    }

    /** Reads a value between two places. */
    private interface Value<T> {
        T read(int from, int to);
    }
}
