package coldproof.files.table;

import coldproof.trace.TraceUnit;
import java.util.Optional;

/** Reads the number in a cell that is not plain digits: with a unit, an exponent, another decimal mark, blanks or many digits. */
final class CellNumber {
    private CellNumber() {}

    /**
     * The number, in the unit of the column where the cell names its own.
     *
     * @param cell what the cell holds, not missing
     * @param decimalComma whether the log writes a decimal comma
     * @param columnUnit unit of the column, null when not known
     * @return the number, or NaN when the cell holds none or could mean two
     */
    static double of(String cell, boolean decimalComma, TraceUnit columnUnit) {
        String text = cell.replace('\u2212', '-').replace("\u00a0", " ").replace("\u202f", " ").strip();
        int end = endOfNumber(text);
        if (end == 0) {
            return Double.NaN;
        }
        double number = plain(text.substring(0, end), decimalComma);
        String unitText = text.substring(end).strip();
        if (unitText.isEmpty() || Double.isNaN(number)) {
            return number;
        }
        Optional<TraceUnit> unit = TraceUnit.named(unitText);
        if (unit.isEmpty()) {
            return Double.NaN;
        }
        if (columnUnit == null || unit.get() == columnUnit) {
            return number;
        }
        return unit.get().kind() == columnUnit.kind() ? unit.get().to(columnUnit, number) : Double.NaN;
    }

    /** The number in a part of a text when that is digits with at most one decimal mark and a minus; NaN when there is more to it. */
    static double plainDigits(String text, int from, int to, boolean decimalComma) {
        char mark = decimalComma ? ',' : '.';
        boolean negative = from < to && text.charAt(from) == '-';
        long mantissa = 0;
        int digits = 0;
        int fraction = -1;
        for (int i = negative ? from + 1 : from; i < to; i++) {
            char c = text.charAt(i);
            if (c >= '0' && c <= '9' && digits < Decimals.EXACT_DIGITS) {
                mantissa = mantissa * 10 + c - '0';
                digits++;
                fraction += fraction >= 0 ? 1 : 0;
            } else if (c == mark && fraction < 0) {
                fraction = 0;
            } else {
                return Double.NaN;
            }
        }
        double number = mantissa / Decimals.powerOfTen(Math.max(0, fraction));
        return digits == 0 ? Double.NaN : negative ? -number : number;
    }

    /** The unit behind the number in a cell; empty when there is none. */
    static String unitIn(String cell) {
        String text = cell.strip();
        int end = endOfNumber(text.replace('\u2212', '-'));
        return end == 0 ? "" : text.substring(end).strip();
    }

    private static int endOfNumber(String text) {
        int i = 0;
        int digits = 0;
        while (i < text.length()) {
            char c = text.charAt(i);
            boolean digit = c >= '0' && c <= '9';
            boolean sign = (c == '-' || c == '+') && (i == 0 || isExponent(text, i - 1));
            boolean exponent = isExponent(text, i) && i + 1 < text.length() && "+-0123456789".indexOf(text.charAt(i + 1)) >= 0;
            if (!digit && !sign && !exponent && c != '.' && c != ',') {
                break;
            }
            digits += digit ? 1 : 0;
            i++;
        }
        return digits == 0 ? 0 : i;
    }

    private static boolean isExponent(String text, int i) {
        char c = text.charAt(i);
        return i > 0 && (c == 'e' || c == 'E') && text.charAt(i - 1) != 'e' && text.charAt(i - 1) != 'E';
    }

    private static double plain(String digits, boolean decimalComma) {
        int points = count(digits, '.');
        int commas = count(digits, ',');
        if (points + commas > 1) {
            return Double.NaN; // thousands and decimals: never guessed
        }
        int comma = digits.indexOf(',');
        boolean mayBeThousands = comma > 0 && !decimalComma && digits.length() - comma == 4 && digits.charAt(0) != '0';
        if (mayBeThousands) {
            return Double.NaN;
        }
        try {
            double number = Double.parseDouble(digits.replace(',', '.'));
            return Double.isInfinite(number) ? Double.NaN : number;
        } catch (NumberFormatException none) {
            return Double.NaN; // such as "1e+": the caller reports the cell
        }
    }

    private static int count(String text, char c) {
        int count = 0;
        for (int i = 0; i < text.length(); i++) {
            count += text.charAt(i) == c ? 1 : 0;
        }
        return count;
    }
}
