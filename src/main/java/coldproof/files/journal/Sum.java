package coldproof.files.journal;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;

/** The checksum of a line: the first 64 bits of SHA-256 (FIPS 180-4), written as 16 lower-case hexadecimal digits. */
final class Sum {
    /** What the first line of a journal names as the sum before it. */
    static final long NONE = 0;
    static final int DIGITS = 16;
    private static final String HEX = "0123456789abcdef";
    private final MessageDigest digest;

    Sum() {
        try {
            digest = MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    long of(byte[] bytes, int from, int to) {
        digest.update(bytes, from, to - from);
        byte[] all = digest.digest();
        long sum = 0;
        for (int i = 0; i < Long.BYTES; i++) {
            sum = sum << 8 | all[i] & 0xff;
        }
        return sum;
    }

    static String text(long sum) {
        char[] digits = new char[DIGITS];
        for (int i = 0; i < DIGITS; i++) {
            digits[i] = HEX.charAt((int) (sum >>> 4 * (DIGITS - 1 - i)) & 15);
        }
        return new String(digits);
    }

    /** Whether 16 lower-case digits stand here; upper case is another byte, so it is damage. */
    static boolean standsAt(byte[] bytes, int from) {
        for (int i = from; i < from + DIGITS; i++) {
            byte c = bytes[i];
            if (!(c >= '0' && c <= '9' || c >= 'a' && c <= 'f')) {
                return false;
            }
        }
        return true;
    }

    /** The sum written here; call after {@link #standsAt}. */
    static long read(byte[] bytes, int from) {
        long sum = 0;
        for (int i = from; i < from + DIGITS; i++) {
            byte c = bytes[i];
            sum = sum << 4 | (c <= '9' ? c - '0' : c - 'a' + 10);
        }
        return sum;
    }
}
