package coldproof.files.table;

import coldproof.trace.ColumnSample.CellKind;

/**
 * Reads the time stamps programs write, from bytes, without making objects: ISO 8601 date and time with or without zone, other dates with
 * a time of day, times of day and running times, 12-hour times.
 *
 * <p>Dates other than ISO are not told apart (day or month first): only their time of day counts, and whoever takes the rows adds a day
 * when it jumps back.
 */
final class TimeText {
    /** What the last successful reading was. */
    private CellKind kind = CellKind.TEXT;
    private byte[] bytes = new byte[0];
    private int at;
    private int end;
    private int lastDigits;

    CellKind kind() {
        return kind;
    }

    /**
     * Reads a time stamp.
     *
     * @return s since 1970 for ISO dates (taken as UTC when there is no zone), else s since midnight or since the start; NaN when it is none
     */
    double seconds(byte[] from, int start, int stop) {
        bytes = from;
        at = start;
        end = stop;
        trim();
        kind = CellKind.TEXT;
        int first = digits(4);
        if (first < 0) {
            return Double.NaN;
        }
        int length = lastDigits;
        if (length == 4 && (is('-') || is('/') || is('.'))) {
            return isoDate(first);
        }
        if (length <= 2 && (is('.') || is('/') || is('-')) && looksLikeDate()) {
            return otherDate();
        }
        return is(':') ? timeOfDay(first, CellKind.TIME_OF_DAY) : Double.NaN;
    }

    private double isoDate(int year) {
        byte mark = bytes[at++];
        int month = digits(2);
        if (month < 1 || month > 12 || !is(mark)) {
            return Double.NaN;
        }
        at++;
        int day = digits(2);
        if (day < 1 || day > 31 || at >= end || !(is('T') || is('t') || is(' ') || is('_'))) {
            return Double.NaN;
        }
        at++;
        skipBlanks();
        double time = timeOfDay(digits(2), CellKind.DATE_TIME);
        return time + daysSince1970(year, month, day) * 86_400.0;
    }

    private boolean looksLikeDate() {
        int i = at + 1;
        while (i < end && (bytes[i] >= '0' && bytes[i] <= '9')) {
            i++;
        }
        return i > at + 1 && i < end && bytes[i] == bytes[at];
    }

    private double otherDate() {
        at++;
        int second = digits(2);
        at++;
        int year = digits(4);
        if (second < 1 || year < 0) {
            return Double.NaN;
        }
        if (is(',') || is('T')) {
            at++;
        }
        skipBlanks();
        return timeOfDay(digits(2), CellKind.TIME_OF_DAY);
    }

    /** Reads on from the first colon. Two parts are minutes and seconds when the second has decimals, else hours and minutes. */
    private double timeOfDay(int first, CellKind found) {
        if (first < 0 || !is(':')) {
            return Double.NaN;
        }
        at++;
        int second = digits(2);
        if (second < 0 || second > 59) {
            return Double.NaN;
        }
        double time;
        if (is(':')) {
            at++;
            int third = digits(2);
            if (third < 0 || third > 60) {
                return Double.NaN;
            }
            time = first * 3600.0 + second * 60.0 + third + fraction();
        } else {
            boolean decimals = is('.') || is(',');
            time = decimals ? first * 60.0 + second + fraction() : first * 3600.0 + second * 60.0;
        }
        return zone(time, first, found);
    }

    private double zone(double time, int hour, CellKind found) {
        skipBlanks();
        double shifted = time;
        if (at + 1 < end && (bytes[at + 1] | 0x20) == 'm' && ((bytes[at] | 0x20) == 'a' || (bytes[at] | 0x20) == 'p')) {
            boolean afternoon = (bytes[at] | 0x20) == 'p';
            shifted += (hour == 12 ? -12 : 0) * 3600 + (afternoon ? 12 : 0) * 3600;
            at += 2;
        } else if (is('Z') || is('z')) {
            at++;
        } else if (is('+') || is('-') && found == CellKind.DATE_TIME) {
            int sign = is('-') ? -1 : 1;
            at++;
            int hours = digits(2);
            if (is(':')) {
                at++;
            }
            int minutes = at < end ? digits(2) : 0;
            if (hours < 0 || minutes < 0) {
                return Double.NaN;
            }
            shifted -= sign * (hours * 3600.0 + minutes * 60.0);
        }
        if (at != end) {
            return Double.NaN;
        }
        kind = found;
        return shifted;
    }

    private double fraction() {
        if (!(is('.') || is(','))) {
            return 0;
        }
        at++;
        long mantissa = 0;
        int count = 0;
        while (at < end && bytes[at] >= '0' && bytes[at] <= '9') {
            if (count < 9) {
                mantissa = mantissa * 10 + bytes[at] - '0';
                count++;
            }
            at++;
        }
        return mantissa / Decimals.powerOfTen(count);
    }

    private int digits(int atMost) {
        int number = 0;
        lastDigits = 0;
        while (at < end && lastDigits < atMost && bytes[at] >= '0' && bytes[at] <= '9') {
            number = number * 10 + bytes[at++] - '0';
            lastDigits++;
        }
        return lastDigits == 0 ? -1 : number;
    }

    private boolean is(int c) {
        return at < end && bytes[at] == c;
    }

    private void skipBlanks() {
        while (is(' ')) {
            at++;
        }
    }

    private void trim() {
        while (end > at && (bytes[end - 1] == ' ' || bytes[end - 1] == '"')) {
            end--;
        }
        while (at < end && (bytes[at] == ' ' || bytes[at] == '"')) {
            at++;
        }
    }

    /** Days from 1970-01-01, proleptic Gregorian calendar: counts from 1 March, so that the leap day ends the year. */
    private static long daysSince1970(int year, int month, int day) {
        int shiftedYear = month <= 2 ? year - 1 : year;
        int shiftedMonth = month <= 2 ? month + 9 : month - 3;
        long era = Math.floorDiv(shiftedYear, 400);
        long yearOfEra = shiftedYear - era * 400;
        long dayOfYear = (153L * shiftedMonth + 2) / 5 + day - 1;
        long dayOfEra = yearOfEra * 365 + yearOfEra / 4 - yearOfEra / 100 + dayOfYear;
        return era * 146_097 + dayOfEra - 719_468;
    }
}
