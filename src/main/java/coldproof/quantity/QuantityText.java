package coldproof.quantity;

import java.util.Locale;
import java.util.Map;
import java.util.OptionalInt;

/**
 * Reads numbers with units as people write them: {@code 3 %}, {@code -9 °C}, {@code 1,5 %}, {@code 3h 30min}. A decimal comma is a
 * decimal point; a thousands separator is refused, because 1,500 means two things.
 */
public final class QuantityText {
    /** Whether a number may stand without its unit. */
    public enum Bare {
        /** The unit must be written. */
        REFUSED,
        /** A bare number is in the unit used inside. */
        ALLOWED
    }

    /** A text that is no quantity of the kind asked for; the message reads after {@code "«text»" is }. */
    public static final class Unreadable extends IllegalArgumentException {
        private static final long serialVersionUID = 1L;

        Unreadable(String message) {
            super(message);
        }
    }

    private static final int MOST_DIGITS = 9; // always fits an int

    private QuantityText() {}

    /**
     * Reads a quantity.
     *
     * @return the value in the dimension's own unit, finite
     * @throws Unreadable if the text is no such quantity; the message says what was expected
     */
    public static double read(String text, Dimension dimension, Bare bare) {
        String rest = clean(text);
        if (rest.isEmpty()) {
            throw new Unreadable("empty: expected " + dimension.expected());
        }
        double total = 0;
        int parts = 0;
        while (!rest.isEmpty()) {
            int end = endOfNumber(rest);
            if (end == 0) {
                throw new Unreadable("not a number with a unit: expected " + dimension.expected());
            }
            double number = number(rest.substring(0, end));
            rest = rest.substring(end).strip();
            int unitEnd = endOfUnit(rest);
            String unit = rest.substring(0, unitEnd).strip();
            rest = rest.substring(unitEnd).strip();
            total += inOwnUnit(number, unit, dimension, bare);
            parts++;
            if (!rest.isEmpty() && dimension != Dimension.TIME) {
                throw new Unreadable("more than one quantity: expected " + dimension.expected());
            }
        }
        if (!Double.isFinite(total) || parts == 0) {
            throw new Unreadable("out of range: expected " + dimension.expected());
        }
        return total;
    }

    /**
     * Reads a plain number with a decimal point or comma.
     *
     * @throws Unreadable if the text is no number, is not finite, or holds a thousands separator
     */
    public static double number(String text) {
        String clean = clean(text);
        if (!isNumber(clean)) {
            throw new Unreadable("not a number");
        }
        double number = Double.parseDouble(clean.replace(',', '.'));
        if (!Double.isFinite(number)) {
            throw new Unreadable("too large a number");
        }
        return number;
    }

    /**
     * Reads a whole number without a sign, of nine digits at most.
     *
     * @return empty if the text is no such number or lies outside the range
     */
    public static OptionalInt whole(String text, int smallest, int largest) {
        int end = afterDigits(text, 0);
        if (end == 0 || end != text.length() || end > MOST_DIGITS) {
            return OptionalInt.empty();
        }
        int number = Integer.parseInt(text);
        return number >= smallest && number <= largest ? OptionalInt.of(number) : OptionalInt.empty();
    }

    /** Digits with at most one decimal mark, perhaps a sign before and an exponent behind. Read by hand: a pattern costs a tenth of the time to start. */
    private static boolean isNumber(String text) {
        int from = afterSign(text, 0);
        int end = afterDigits(text, from);
        int digits = end - from;
        if (end < text.length() && (text.charAt(end) == '.' || text.charAt(end) == ',')) {
            int decimals = end + 1;
            end = afterDigits(text, decimals);
            digits += end - decimals;
        }
        if (digits == 0) {
            return false;
        }
        if (end < text.length() && (text.charAt(end) == 'e' || text.charAt(end) == 'E')) {
            int exponent = afterSign(text, end + 1);
            end = afterDigits(text, exponent);
            return end > exponent && end == text.length();
        }
        return end == text.length();
    }

    private static int afterSign(String text, int from) {
        return from < text.length() && (text.charAt(from) == '-' || text.charAt(from) == '+') ? from + 1 : from;
    }

    private static int afterDigits(String text, int from) {
        int i = from;
        while (i < text.length() && isDigit(text.charAt(i))) {
            i++;
        }
        return i;
    }

    private static String clean(String text) {
        return text.replace('\u2212', '-').replace('\u00a0', ' ').replace('\u202f', ' ').replace('\u2009', ' ').strip();
    }

    private static int endOfNumber(String text) {
        int i = afterSign(text, 0);
        int digits = 0;
        while (i < text.length() && (isDigit(text.charAt(i)) || text.charAt(i) == '.' || text.charAt(i) == ',')) {
            digits += isDigit(text.charAt(i)) ? 1 : 0;
            i++;
        }
        return digits == 0 ? 0 : i;
    }

    private static int endOfUnit(String text) {
        int i = 0;
        while (i < text.length() && !isDigit(text.charAt(i)) && text.charAt(i) != '-' && text.charAt(i) != '+') {
            i++;
        }
        return i;
    }

    private static boolean isDigit(char c) {
        return c >= '0' && c <= '9';
    }

    private static double inOwnUnit(double number, String unit, Dimension dimension, Bare bare) {
        if (unit.isEmpty()) {
            if (bare == Bare.REFUSED) {
                throw new Unreadable("without a unit: expected " + dimension.expected());
            }
            return number;
        }
        if (dimension == Dimension.TEMPERATURE) {
            return temperature(number, unit);
        }
        Double factor = dimension.factors().get(unit);
        if (factor == null) {
            for (Map.Entry<String, Double> entry : dimension.factors().entrySet()) {
                boolean caseDecides = dimension == Dimension.POWER || dimension == Dimension.CLOCK || dimension == Dimension.ENERGY;
                if (!caseDecides && entry.getKey().equalsIgnoreCase(unit)) {
                    factor = entry.getValue();
                }
            }
        }
        if (factor == null) {
            throw new Unreadable("in \"" + unit + "\", which is no unit here: expected " + dimension.expected());
        }
        return number * factor;
    }

    private static double temperature(double number, String unit) {
        String scale = unit.replace("°", "").replace("º", "").strip().toUpperCase(Locale.ROOT);
        try {
            return switch (scale) {
                case "C" -> new Celsius(number).degrees();
                case "F" -> Celsius.ofFahrenheit(number).degrees();
                case "K" -> Celsius.ofKelvin(number).degrees();
                default -> throw new Unreadable("in \"" + unit + "\", which is no temperature scale: expected "
                        + Dimension.TEMPERATURE.expected());
            };
        } catch (Unreadable unreadable) {
            throw unreadable;
        } catch (IllegalArgumentException outside) {
            throw new Unreadable("below absolute zero or beyond any device: expected " + Dimension.TEMPERATURE.expected());
        }
    }
}
