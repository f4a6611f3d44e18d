package coldproof.trace;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A heading taken apart: its words and the unit in it. The words are general words of the trade in a few languages, no program's names.
 */
final class HeadingWords {
    private final String folded;
    private final List<String> words;
    private final Optional<TraceUnit> unit;

    HeadingWords(String heading) {
        String text = heading.strip();
        Optional<TraceUnit> found = Optional.empty();
        int open = Math.max(Math.max(text.lastIndexOf('['), text.lastIndexOf('(')), text.lastIndexOf('{'));
        if (open >= 0) {
            found = TraceUnit.named(text.substring(open));
            text = found.isPresent() ? text.substring(0, open) : text;
        }
        for (String mark : new String[] {" / ", "/", " in ", ", "}) {
            int at = text.lastIndexOf(mark);
            if (found.isEmpty() && at > 0) {
                found = TraceUnit.named(text.substring(at + mark.length()));
                text = found.isPresent() ? text.substring(0, at) : text;
            }
        }
        List<String> parts = split(text);
        if (found.isEmpty() && parts.size() > 1) {
            found = TraceUnit.named(parts.get(parts.size() - 1));
            if (found.isPresent()) {
                parts.remove(parts.size() - 1);
            }
        }
        if (found.isEmpty() && text.endsWith("%")) {
            found = Optional.of(TraceUnit.PERCENT);
        }
        unit = found;
        words = parts;
        folded = String.join("", parts);
    }

    Optional<TraceUnit> unit() {
        return unit;
    }

    /** Whether one of the words stands in the heading; words of four letters or more also as a part of a longer one. */
    boolean hasAny(String... candidates) {
        for (String candidate : candidates) {
            if (words.contains(candidate) || candidate.length() >= 4 && folded.contains(candidate)) {
                return true;
            }
        }
        return false;
    }

    /** Whether the heading is nothing but one of these symbols, perhaps with a number behind. */
    boolean isSymbol(String... symbols) {
        String bare = folded.replaceAll("\\d+$", "");
        for (String symbol : symbols) {
            if (bare.equals(symbol)) {
                return true;
            }
        }
        return false;
    }

    private static List<String> split(String text) {
        List<String> parts = new ArrayList<>();
        StringBuilder part = new StringBuilder();
        char before = ' ';
        for (char c : text.toCharArray()) {
            boolean letter = Character.isLetter(c) || c == '°' || c == '%';
            boolean newPart = letter && Character.isUpperCase(c) && Character.isLowerCase(before)
                    || letter && Character.isDigit(before) || Character.isDigit(c) && !Character.isDigit(before);
            if (newPart || !letter && !Character.isDigit(c)) {
                flush(part, parts);
            }
            if (letter || Character.isDigit(c)) {
                part.append(c);
            }
            before = c;
        }
        flush(part, parts);
        return parts;
    }

    private static void flush(StringBuilder part, List<String> parts) {
        if (!part.isEmpty()) {
            parts.add(part.toString().toLowerCase(Locale.ROOT));
            part.setLength(0);
        }
    }
}
