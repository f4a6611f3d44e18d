package coldproof.files.table;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;

/**
 * Eight neighbouring bytes of a text as one number, the first in its lowest bits, so that one step tells of eight: reading a log byte by byte
 * takes three times as long. Sets of bytes are numbers too, with the highest bit of each byte that belongs.
 */
final class EightBytes {
    private static final VarHandle LONGS = MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.LITTLE_ENDIAN);
    private static final long ONES = 0x0101_0101_0101_0101L;
    private static final long HIGH = 0x80 * ONES;
    private static final long ZERO_DIGITS = '0' * ONES;
    private static final long PAIRS = 0x000000FF_000000FFL;

    private EightBytes() {}

    /** The eight bytes from a place on. */
    static long at(byte[] bytes, int from) {
        return (long) LONGS.get(bytes, from);
    }

    /** Eight times the same byte, for {@link #equal}. */
    static long all(byte value) {
        return (value & 0xFF) * ONES;
    }

    /** The bytes that are no digit. */
    static long noDigits(long word) {
        long digits = word ^ ZERO_DIGITS; // 0 to 9 where there is a digit, 10 or more elsewhere
        return ((digits & ~HIGH) + (0x80 - 10) * ONES | digits) & HIGH;
    }

    /** The bytes equal to those of a pattern. Only the first is sure to be one. */
    static long equal(long word, long pattern) {
        long zeros = word ^ pattern;
        return zeros - ONES & ~zeros & HIGH;
    }

    /** Place of the first byte of a set, 8 when it is empty. */
    static int first(long set) {
        return Long.numberOfTrailingZeros(set) >>> 3;
    }

    /** The same word with one byte taken out and the later ones moved up. */
    static long without(long word, int place) {
        long before = (1L << 8 * place) - 1;
        return word & before | word >>> 8 & ~before;
    }

    /**
     * The number that the first bytes write.
     *
     * @param word begins with digits
     * @param digits how many of them count, 1 to 8
     */
    static long number(long word, int digits) {
        long units = (word ^ ZERO_DIGITS) << 64 - 8 * digits; // the last digit in the highest byte, zeros before the first
        long pairs = units * 10 + (units >>> 8); // each second byte: two digits
        return (pairs & PAIRS) * (100 + (1_000_000L << 32)) + (pairs >>> 16 & PAIRS) * (1 + (10_000L << 32)) >>> 32;
    }
}
