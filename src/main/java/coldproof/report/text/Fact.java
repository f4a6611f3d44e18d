package coldproof.report.text;

import java.util.List;
import java.util.stream.Collectors;

/**
 * A labelled line of an answer.
 *
 * @param label a word or two
 * @param spans what it says, in pieces that follow each other
 */
public record Fact(String label, List<Span> spans) {
    /** Copies. */
    public Fact {
        spans = List.copyOf(spans);
    }

    /** A line of words. */
    public static Fact of(String label, String text) {
        return new Fact(label, List.of(Span.words(text)));
    }

    /** The whole line as people read it. */
    public String text() {
        return spans.stream().map(Span::shown).collect(Collectors.joining());
    }

    /**
     * A piece of a line: words, or a number as shown together with the exact number behind it.
     *
     * @param shown as people read it
     * @param key what the number is, as in the JSON document, with dots for objects within; empty for words
     * @param exact the number; NaN for words
     */
    public record Span(String shown, String key, double exact) {
        /** Words. */
        public static Span words(String text) {
            return new Span(text, "", Double.NaN);
        }

        /** A number. */
        public static Span number(String key, double exact, String shown) {
            return new Span(shown, key, exact);
        }

        /** Whether an exact number stands behind it. */
        public boolean isNumber() {
            return !key.isEmpty();
        }
    }
}
