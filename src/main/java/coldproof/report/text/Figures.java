package coldproof.report.text;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;

/** Numbers as people read them: sensible digits, a unit, a sign where it matters. */
public final class Figures {
    private static final int SECONDS_PER_MINUTE = 60;

    private Figures() {}

    /** A fixed number of decimals, never "-0.0"; a dash for NaN. */
    public static String fixed(double number, int decimals) {
        if (!Double.isFinite(number)) {
            return number > 0 ? "unbounded" : number < 0 ? "-unbounded" : "-";
        }
        // rounds like a formatter does, without the half of the starting time that a formatter's symbols take
        String text = BigDecimal.valueOf(number).setScale(decimals, RoundingMode.HALF_UP).toPlainString();
        return text.startsWith("-") && text.chars().noneMatch(c -> c >= '1' && c <= '9') ? text.substring(1) : text;
    }

    /** A change with its sign: {@code +3.2 %}. */
    public static String change(double percent) {
        String text = fixed(percent, Math.abs(percent) < 10 ? 2 : 1);
        return (percent > 0 && !text.startsWith("-") ? "+" : "") + text + " %";
    }

    /** A percentage without a sign for positive numbers: {@code 1.2 %}. */
    public static String percent(double percent) {
        return fixed(percent, Math.abs(percent) < 10 ? 2 : 1) + " %";
    }

    /** A percentage as a person would have written it: {@code 3 %}, {@code 1.5 %}. */
    public static String given(double percent) {
        String text = fixed(percent, 4);
        int end = text.length();
        while (text.charAt(end - 1) == '0') {
            end--;
        }
        return text.substring(0, text.charAt(end - 1) == '.' ? end - 1 : end) + " %";
    }

    /** A probability: three significant digits, {@code < 0.0001} when tiny. */
    public static String probability(double p) {
        if (!Double.isFinite(p)) {
            return "-";
        }
        if (p > 0 && p < 0.0001) {
            return "< 0.0001";
        }
        return p < 0.1 ? fixed(p, 4) : fixed(p, 3);
    }

    /** A p-value as it stands in a sentence: {@code p = 0.0123} or {@code p < 0.0001}. */
    public static String pValue(double p) {
        String text = probability(p);
        return text.startsWith("<") ? "p " + text : "p = " + text;
    }

    /** A power or coverage as a percentage: {@code 93.3 %}. */
    public static String share(double probability) {
        return fixed(100 * probability, 1) + " %";
    }

    /** Minutes as {@code 95 min}, as {@code 3 h 05 min} from two hours up, and as {@code 45 s} below two minutes that are not whole. */
    public static String minutes(double minutes) {
        if (!Double.isFinite(minutes)) {
            return "-";
        }
        long seconds = Math.round(minutes * SECONDS_PER_MINUTE);
        if (seconds < 2 * SECONDS_PER_MINUTE && seconds % SECONDS_PER_MINUTE != 0) {
            return seconds + " s";
        }
        long whole = Math.round(minutes);
        if (whole < 120) {
            return whole + " min";
        }
        return String.format(Locale.ROOT, "%d h %02d min", whole / 60, whole % 60);
    }

    /** Four significant digits without an exponent where possible: a score. */
    public static String score(double score) {
        if (!Double.isFinite(score)) {
            return "-";
        }
        double size = Math.abs(score);
        if (size != 0 && (size >= 1e9 || size < 1e-4)) {
            return String.format(Locale.ROOT, "%.4g", score);
        }
        int decimals = size >= 1000 ? 1 : size >= 100 ? 2 : size >= 1 ? 3 : 5;
        return fixed(score, decimals);
    }
}
