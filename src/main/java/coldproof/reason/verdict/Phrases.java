package coldproof.reason.verdict;

import coldproof.quantity.LogRatio;
import java.util.List;
import java.util.Locale;

/** Numbers inside sentences. */
final class Phrases {
    private Phrases() {}

    /** A log change as percent with at most two decimals and its sign left out where it is positive, such as "3 %". */
    static String percent(double log) {
        double rounded = Math.rint(100 * LogRatio.toPercent(log)) / 100;
        return (rounded == Math.rint(rounded) ? Long.toString((long) rounded) : String.format(Locale.ROOT, "%.2f", rounded)) + " %";
    }

    /** A log change as percent with its sign, such as "+3.25 %". */
    static String signed(double log) {
        return String.format(Locale.ROOT, "%+.2f %%", LogRatio.toPercent(log));
    }

    static String p(double p) {
        return p < 0.001 ? "p < 0.001" : String.format(Locale.ROOT, "p = %.3f", p);
    }

    static String number(double value) {
        return String.format(Locale.ROOT, "%.2f", value);
    }

    /** "a", "a and b", "a, b and c". */
    static String list(List<String> parts) {
        int last = parts.size() - 1;
        return last < 1 ? String.join("", parts) : String.join(", ", parts.subList(0, last)) + " and " + parts.get(last);
    }
}
