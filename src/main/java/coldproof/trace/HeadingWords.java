package coldproof.trace;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A heading taken apart: its words in small letters without accents, and the unit behind them. The unit is the longest end of the heading
 * that names one, so that {@code Fan in 1/min} is not read as minutes.
 */
final class HeadingWords {
    private static final int LONGEST_SYMBOL = 9;

    private final List<String> words;
    private final String symbol;
    private Optional<TraceUnit> unit = Optional.empty();
    private boolean foreign;

    HeadingWords(String heading) {
        String text = heading.strip();
        String rest = withoutUnit(text);
        words = split(folded(rest));
        symbol = String.join("", words).replaceAll("\\d+$", "");
        if (isSymbolOf(symbol)) {
            words.add(symbol.substring(1));
        }
    }

    /** Takes the unit off the end and remembers it; a unit of something no channel measures is remembered as foreign. */
    private String withoutUnit(String text) {
        for (int at = 1; at < text.length(); at++) {
            if (isBorder(text, at)) {
                String end = trimmed(text.substring(at));
                Optional<TraceUnit> named = TraceUnit.named(end);
                boolean marked = text.charAt(at) != ' ';
                if (named.isPresent() || ForeignUnits.contains(end, marked)) {
                    unit = named;
                    foreign = named.isEmpty();
                    return text.substring(0, at);
                }
            }
        }
        String numbered = text.replaceAll("\\d+$", "");
        if (numbered.length() > 1 && numbered.length() < text.length()) {
            char last = numbered.charAt(numbered.length() - 1);
            boolean camel = Character.isUpperCase(last) && Character.isLowerCase(numbered.charAt(numbered.length() - 2));
            unit = camel ? TraceUnit.named(String.valueOf(last)).filter(one -> one.kind() == TraceUnit.Kind.TEMPERATURE) : Optional.empty();
            return unit.isPresent() ? numbered.substring(0, numbered.length() - 1) : text;
        }
        return text;
    }

    /** Where a unit may begin: at a mark, or at a capital or °, % behind something else, as in {@code clockMHz}. */
    private static boolean isBorder(String text, int at) {
        char c = text.charAt(at);
        char before = text.charAt(at - 1);
        boolean mark = !Character.isLetterOrDigit(c) && "°%µμ℃℉".indexOf(c) < 0;
        boolean capital = Character.isUpperCase(c) && Character.isLowerCase(before);
        return mark || capital || "°%℃℉".indexOf(c) >= 0;
    }

    private static String trimmed(String end) {
        String text = end;
        while (!text.isEmpty() && " _/,:;.-".indexOf(text.charAt(0)) >= 0) {
            text = text.substring(1);
        }
        return text.startsWith("in ") ? text.substring(3).strip() : text.strip();
    }

    /** Small letters without accents: the same word is written with and without them. */
    private static String folded(String text) {
        String plain = text.replace("œ", "oe").replace("Œ", "Oe").replace("ß", "ss").replace("ø", "o").replace("Ø", "O");
        return Normalizer.normalize(plain, Normalizer.Form.NFD).replaceAll("\\p{M}", "");
    }

    Optional<TraceUnit> unit() {
        return unit;
    }

    /** Whether the heading ends in a unit of something that no channel measures, such as volts. */
    boolean isForeign() {
        return foreign;
    }

    /** Whether one of the words fits one of these; a star stands for any letters at the beginning or end, as in {@code *board}. */
    boolean hasAny(String... patterns) {
        for (String word : words) {
            for (String pattern : patterns) {
                if (fits(word, pattern)) {
                    return true;
                }
            }
        }
        return false;
    }

    private static boolean fits(String word, String pattern) {
        boolean anyBefore = pattern.startsWith("*");
        boolean anyBehind = pattern.endsWith("*");
        String core = pattern.substring(anyBefore ? 1 : 0, pattern.length() - (anyBehind ? 1 : 0));
        if (anyBefore && anyBehind) {
            return word.contains(core);
        }
        return anyBefore ? word.endsWith(core) : anyBehind ? word.startsWith(core) : word.equals(core);
    }

    /** Whether the heading is nothing but one of these symbols, perhaps with a number behind. */
    boolean isSymbol(String... symbols) {
        return List.of(symbols).contains(symbol);
    }

    /** What the first letter of a symbol such as {@code Tskin} or {@code Ppkg} says is measured; empty for any other heading. */
    Optional<TraceUnit.Kind> kindOfSymbol() {
        if (!isSymbolOf(symbol)) {
            return Optional.empty();
        }
        return Optional.of(switch (symbol.charAt(0)) {
            case 't' -> TraceUnit.Kind.TEMPERATURE;
            case 'p' -> TraceUnit.Kind.POWER;
            case 'f' -> TraceUnit.Kind.CLOCK;
            case 'n' -> TraceUnit.Kind.ROTATION;
            default -> TraceUnit.Kind.SHARE;
        });
    }

    private static boolean isSymbolOf(String text) {
        if (text.length() < 3 || text.length() > LONGEST_SYMBOL) {
            return false;
        }
        String index = text.substring(1);
        return switch (text.charAt(0)) {
            case 't', 'p' -> Vocabulary.INDICES.contains(index);
            case 'f', 'u' -> Vocabulary.WORKING_INDICES.contains(index);
            case 'n' -> index.equals("fan");
            default -> false;
        };
    }

    /** The words without those that fit a pattern and without numbers: what two columns of one sensor have in common. */
    List<String> wordsBut(String... patterns) {
        return words.stream().filter(word -> !Character.isDigit(word.charAt(0)))
                .filter(word -> Arrays.stream(patterns).noneMatch(pattern -> fits(word, pattern))).toList();
    }

    /** Splits at anything that is neither letter nor digit, between letters and digits, and at capitals as in {@code dieTemp} or {@code GPUTemp}. */
    private static List<String> split(String text) {
        List<String> parts = new ArrayList<>();
        StringBuilder part = new StringBuilder();
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (Character.isLetterOrDigit(c)) {
                if (!part.isEmpty() && beginsPart(text, i)) {
                    flush(part, parts);
                }
                part.append(c);
            } else {
                flush(part, parts);
            }
        }
        flush(part, parts);
        return parts;
    }

    private static boolean beginsPart(String text, int i) {
        char c = text.charAt(i);
        char before = text.charAt(i - 1);
        boolean acronymEnds = Character.isUpperCase(c) && Character.isUpperCase(before) && i + 1 < text.length() && Character.isLowerCase(text.charAt(i + 1));
        return Character.isDigit(c) != Character.isDigit(before) || Character.isUpperCase(c) && Character.isLowerCase(before) || acronymEnds;
    }

    private static void flush(StringBuilder part, List<String> parts) {
        if (!part.isEmpty()) {
            parts.add(part.toString().toLowerCase(Locale.ROOT));
            part.setLength(0);
        }
    }
}
