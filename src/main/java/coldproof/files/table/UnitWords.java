package coldproof.files.table;

import java.util.List;
import java.util.Locale;
import java.util.Set;

/** Tells a line of units below the column names from a line of data. */
final class UnitWords {
    private static final Set<String> WORDS = Set.of("s", "sec", "ms", "us", "µs", "μs", "ns", "min", "h", "c", "°c", "ºc", "degc", "deg c", "f",
            "°f", "ºf", "degf", "deg f", "k", "w", "mw", "kw", "uw", "µw", "v", "mv", "a", "ma", "hz", "khz", "mhz", "ghz", "rpm", "1/min",
            "min-1", "%", "pct", "percent", "j", "wh", "mwh", "ah", "mah", "m/s", "km/h", "mph", "pa", "hpa", "fps", "frames/s", "1/s", "-", "");

    private UnitWords() {}

    /** Whether every cell is a unit, in brackets or not, or blank, and at least one is a unit. */
    static boolean isLineOfUnits(List<String> cells) {
        boolean any = false;
        for (String cell : cells) {
            String bare = bare(cell);
            if (!WORDS.contains(bare)) {
                return false;
            }
            any |= !bare.isEmpty() && !bare.equals("-");
        }
        return any;
    }

    private static String bare(String cell) {
        String text = cell.strip().toLowerCase(Locale.ROOT);
        boolean bracketed = text.length() > 2 && "[(".indexOf(text.charAt(0)) >= 0 && "])".indexOf(text.charAt(text.length() - 1)) >= 0;
        return bracketed ? text.substring(1, text.length() - 1).strip() : text;
    }
}
