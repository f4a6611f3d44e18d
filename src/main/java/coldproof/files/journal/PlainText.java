package coldproof.files.journal;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;

/**
 * Values of JSON (RFC 8259) in the one form that {@link JsonText} gives them, read from the bytes of a line where they stand. Most lines of
 * a journal are of this form, and reading them so costs a fifth of what the general reader takes. Whatever is of another form, though it may
 * be JSON, is refused with {@link NotPlain}.
 */
final class PlainText {
    private static final int SHORT = 40; // bytes; longer texts hardly repeat
    private static final int WORDS = 1 << 10;
    private static final int LONGEST_WHOLE = 18; // digits that any long can hold
    private static final long EXACT = 1L << 53; // a mantissa up to here is exact as a double
    private static final long LONGEST = 100_000_000_000_000_000L; // one digit more still fits a long
    private static final double SPLIT = 134_217_729; // 2^27 + 1: cuts a double in two halves of 26 bits
    private static final double DOUBT = 0x1p-50; // four times the error of the quotient of a remainder
    private static final int UNITS_OF_A_DATE = 20; // bytes of 2026-01-14T09:31:07Z, the least a time has
    private static final double[] POWERS = {1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18,
            1e19, 1e20, 1e21, 1e22}; // all exact
    private final String[] words = new String[WORDS];
    private byte[] bytes;
    private int end;
    private LocalDate lastDate = LocalDate.EPOCH;
    private int lastDateDigits = 1970_01_01;

    /** Goes to the line in these bytes. */
    void take(byte[] all, int to) {
        bytes = all;
        end = to;
    }

    /** The byte here; 0, which stands in no line, after its end. */
    byte at(int place) {
        return place < end ? bytes[place] : 0;
    }

    /** Goes over one byte that must stand here. */
    int over(char what, int place) {
        if (at(place) != what) {
            throw new NotPlain("no " + what);
        }
        return place + 1;
    }

    /** The place after a text if it is this one, which has no escapes; else -1. */
    int after(String known, int place) {
        int last = place + known.length() + 1;
        if (last >= end || bytes[place] != '"' || bytes[last] != '"') {
            return -1;
        }
        return same(known, place + 1, known.length()) ? last + 1 : -1;
    }

    /** The place after a value; its inside is looked at when it is asked for. */
    int afterValue(int place) {
        byte first = at(place);
        if (first == '"') {
            return afterText(place);
        }
        if (first != '{' && first != '[') {
            int after = place;
            while (isOfNumber(at(after))) {
                after++;
            }
            return after;
        }
        int depth = 0;
        int after = place;
        do {
            byte here = at(after);
            if (here == 0) {
                throw new NotPlain("an end is missing");
            }
            depth += here == '{' || here == '[' ? 1 : here == '}' || here == ']' ? -1 : 0;
            after = here == '"' ? afterText(after) : after + 1;
        } while (depth > 0);
        return after;
    }

    private static boolean isOfNumber(byte c) {
        return c >= '0' && c <= '9' || c == '-' || c == '.' || c == 'E';
    }

    private int afterText(int quote) {
        byte[] all = bytes;
        int place = quote + 1;
        while (place < end) {
            byte here = all[place++];
            if (here == '"') {
                return place;
            }
            place += here == '\\' ? 1 : 0;
        }
        throw new NotPlain("a text without end");
    }

    /** The text whose quotes are the first and last byte. */
    String text(int from, int to) {
        over('"', from);
        int hash = 0;
        for (int i = from + 1; i < to - 1; i++) {
            byte here = bytes[i];
            if (here < ' ' || here == '\\') {
                return decoded(from + 1, to - 1);
            }
            hash = 31 * hash + here;
        }
        int length = to - from - 2;
        if (length > SHORT) {
            return new String(bytes, from + 1, length, StandardCharsets.ISO_8859_1);
        }
        int slot = (hash ^ hash >>> 15) & WORDS - 1;
        String known = words[slot];
        if (known == null || !same(known, from + 1, length)) {
            known = new String(bytes, from + 1, length, StandardCharsets.ISO_8859_1);
            words[slot] = known;
        }
        return known;
    }

    private boolean same(String word, int from, int length) {
        if (word.length() != length) {
            return false;
        }
        for (int i = 0; i < length; i++) {
            if (word.charAt(i) != bytes[from + i]) {
                return false;
            }
        }
        return true;
    }

    private String decoded(int from, int to) {
        StringBuilder text = new StringBuilder(to - from);
        int run = from;
        for (int i = from; i < to; i++) {
            if (bytes[i] >= 0 && bytes[i] < ' ') {
                throw new NotPlain("a control character");
            }
            if (bytes[i] == '\\') {
                utf8(run, i, text);
                i = escape(i + 1, text);
                run = i + 1;
            }
        }
        utf8(run, to, text);
        return text.toString();
    }

    private void utf8(int from, int to, StringBuilder text) {
        String run = new String(bytes, from, to - from, StandardCharsets.UTF_8);
        if (run.indexOf('\ufffd') >= 0) {
            throw new NotPlain("perhaps no UTF-8");
        }
        text.append(run);
    }

    /** Reads what follows a backslash and returns the place of its last byte. */
    private int escape(int place, StringBuilder text) {
        byte what = at(place);
        if (what == '"' || what == '\\') {
            text.append((char) what);
        } else if (what == 'n') {
            text.append('\n');
        } else if (what == 'u') {
            int character = 0;
            for (int i = 1; i <= 4; i++) {
                character = character << 4 | hexadecimal(at(place + i));
            }
            text.append((char) character);
            return place + 4;
        } else {
            throw new NotPlain("an escape that is not written here");
        }
        return place;
    }

    private static int hexadecimal(byte c) {
        if (c >= '0' && c <= '9') {
            return c - '0';
        }
        if (c >= 'a' && c <= 'f') {
            return c - 'a' + 10;
        }
        throw new NotPlain("no digit");
    }

    boolean isWhole(int from, int to) {
        for (int i = from; i < to; i++) {
            if (bytes[i] == '.' || bytes[i] == 'E') {
                return false;
            }
        }
        return true;
    }

    long whole(int from, int to) {
        int place = from + (at(from) == '-' ? 1 : 0);
        if (place == to || to - place > LONGEST_WHOLE || bytes[place] == '0' && to - place > 1) {
            throw new NotPlain("no whole number");
        }
        long whole = 0;
        for (int i = place; i < to; i++) {
            whole = 10 * whole + digit(bytes[i]);
        }
        return place > from ? -whole : whole;
    }

    private static int digit(byte c) {
        if (c < '0' || c > '9') {
            throw new NotPlain("no digit");
        }
        return c - '0';
    }

    /**
     * The number nearest to the decimal: an exact mantissa divided by an exact power of ten is rounded once, so correctly; longer ones are
     * left to the platform.
     */
    double number(int from, int to) {
        if (isWhole(from, to)) {
            return whole(from, to);
        }
        int place = from + (at(from) == '-' ? 1 : 0);
        long mantissa = 0;
        int point = 0;
        for (int i = place; i < to; i++) {
            byte c = bytes[i];
            if (c == 'E' || mantissa >= LONGEST) {
                return slowly(from, to);
            }
            if (c == '.' && point == 0 && i > place) {
                point = i;
            } else {
                mantissa = 10 * mantissa + digit(c);
            }
        }
        int decimals = to - point - 1;
        if (decimals == 0 || decimals >= POWERS.length || bytes[place] == '0' && point != place + 1) {
            throw new NotPlain("no decimal");
        }
        double number = mantissa <= EXACT ? mantissa / POWERS[decimals] : quotient(mantissa, POWERS[decimals]);
        if (Double.isNaN(number)) {
            return slowly(from, to);
        }
        return place > from ? -number : number;
    }

    /**
     * A mantissa of more than 53 bits divided by an exact power of ten, correctly rounded; NaN where that is too near to the middle of two numbers
     * to be told so. The first quotient is put right by its exact remainder (T. J. Dekker, Numerische Mathematik 18 (1971) 224-242: exact
     * products of doubles), whose own quotient is known to 2 in 2^52.
     */
    static double quotient(long mantissa, double power) {
        double high = mantissa;
        double low = mantissa - (long) high;
        double quotient = high / power;
        double product = quotient * power;
        double remainder = high - product - productError(quotient, power, product) + low;
        double rest = remainder / power;
        double least = quotient + rest * (1 - DOUBT);
        return least == quotient + rest * (1 + DOUBT) ? least : Double.NaN;
    }

    /** How much the exact product of two numbers is larger than the rounded one. */
    private static double productError(double a, double b, double product) {
        double splitA = SPLIT * a;
        double highA = splitA - (splitA - a);
        double lowA = a - highA;
        double splitB = SPLIT * b;
        double highB = splitB - (splitB - b);
        double lowB = b - highB;
        return lowA * lowB - (product - highA * highB - lowA * highB - highA * lowB);
    }

    /** Any number that JSON allows, but for the signs and small letters that are not written here. */
    private double slowly(int from, int to) {
        int place = digits(from + (at(from) == '-' ? 1 : 0), to);
        place = anyDigits(over('.', place), to);
        if (place < to) {
            int exponent = over('E', place);
            place = digits(exponent + (at(exponent) == '-' ? 1 : 0), to);
        }
        if (place != to) {
            throw new NotPlain("no number");
        }
        return Double.parseDouble(new String(bytes, from, to - from, StandardCharsets.ISO_8859_1));
    }

    private int digits(int from, int to) {
        int place = anyDigits(from, to);
        if (bytes[from] == '0' && place > from + 1) {
            throw new NotPlain("a zero too many");
        }
        return place;
    }

    private int anyDigits(int from, int to) {
        int place = from;
        while (place < to && bytes[place] >= '0' && bytes[place] <= '9') {
            place++;
        }
        if (place == from) {
            throw new NotPlain("no digits");
        }
        return place;
    }

    /** A time as {@code 2026-01-14T09:31:07.045+01:00}, the fraction and an offset other than Z optional. */
    OffsetDateTime time(int from, int to) {
        int place = over('"', from);
        if (to - from - 2 < UNITS_OF_A_DATE) {
            throw new NotPlain("no time");
        }
        int year = two(place) * 100 + two(place + 2);
        int month = two(over('-', place + 4));
        int day = two(over('-', place + 7));
        int hour = two(over('T', place + 10));
        int minute = two(over(':', place + 13));
        int second = two(over(':', place + 16));
        place += 19;
        int nanos = 0;
        if (at(place) == '.') {
            int start = ++place;
            for (; place < start + 9 && at(place) >= '0' && at(place) <= '9'; place++) {
                nanos = 10 * nanos + bytes[place] - '0';
            }
            if (place == start) {
                throw new NotPlain("no fraction");
            }
            for (int digits = place - start; digits < 9; digits++) {
                nanos *= 10;
            }
        }
        int date = (year * 100 + month) * 100 + day;
        if (date != lastDateDigits) { // a bench day has many lines
            lastDate = LocalDate.of(year, month, day);
            lastDateDigits = date;
        }
        return OffsetDateTime.of(lastDate, LocalTime.of(hour, minute, second, nanos), offset(place, to - 1));
    }

    private ZoneOffset offset(int from, int to) {
        if (to - from == 1) {
            over('Z', from);
            return ZoneOffset.UTC;
        }
        int sign = at(from) == '-' ? -1 : 1;
        if (to - from != 6 || sign > 0 && at(from) != '+') {
            throw new NotPlain("no offset");
        }
        return ZoneOffset.ofHoursMinutes(sign * two(from + 1), sign * two(over(':', from + 3)));
    }

    private int two(int place) {
        return 10 * digit(at(place)) + digit(at(place + 1));
    }
}
