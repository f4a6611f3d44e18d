import java.io.IOException;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.lang.management.ManagementFactory;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.util.Locale;

/**
 * What reading a log costs at the very least, on one thread: its bytes, its line ends, its cells, its numbers. Knows nothing but unsigned
 * decimals between commas, checks nothing and keeps nothing, so that no reader that does can be quicker in this language.
 *
 * <p>Run: {@code java src/test/speed/RawLimits.java LOG}. Prints processor seconds, warm, the best of five.
 */
final class RawLimits {
    private static final VarHandle LONGS = MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.LITTLE_ENDIAN);
    private static final long ONES = 0x0101010101010101L;
    private static final long HIGH = 0x80 * ONES;
    private static final long PAIRS = 0x000000FF000000FFL;
    private static final double[] TENS = {1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8};
    private static final int BLOCK = 1 << 18;

    private static double total; // so that nothing is left out as useless

    private RawLimits() {}

    private interface Work {
        void on(byte[] bytes, int length);
    }

    public static void main(String[] arguments) throws IOException {
        Path log = Path.of(arguments[0]);
        String[] names = {"the bytes alone", "the line ends", "the cells", "the numbers"};
        Work[] works = {(bytes, length) -> {}, RawLimits::lines, RawLimits::cells, RawLimits::numbers};
        for (int i = 0; i < works.length; i++) {
            double best = Double.POSITIVE_INFINITY;
            for (int run = 0; run < 5; run++) {
                long began = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
                read(log, works[i]);
                best = Math.min(best, (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - began) / 1e9);
            }
            System.out.printf(Locale.ROOT, "      -  %7.2f  -                -      -          -  limit: %s%n", best, names[i]);
        }
        if (Double.isNaN(total)) {
            throw new IllegalStateException("the numbers do not add up");
        }
    }

    private static void read(Path log, Work work) throws IOException {
        byte[] bytes = new byte[BLOCK + 16];
        ByteBuffer direct = ByteBuffer.allocateDirect(1 << 16);
        try (FileChannel channel = FileChannel.open(log)) {
            int kept = 0;
            boolean ended = false;
            while (!ended) {
                int filled = kept;
                while (filled < BLOCK && !ended) {
                    direct.clear().limit(Math.min(direct.capacity(), BLOCK - filled));
                    int got = channel.read(direct);
                    ended = got < 0;
                    direct.flip();
                    direct.get(bytes, filled, direct.limit());
                    filled += direct.limit();
                }
                int end = filled;
                while (end > 0 && bytes[end - 1] != '\n') {
                    end--;
                }
                work.on(bytes, end);
                kept = filled - end;
                System.arraycopy(bytes, end, bytes, 0, kept);
            }
        }
    }

    private static long noDigits(long word) {
        long digits = word ^ '0' * ONES;
        return ((digits & ~HIGH) + (0x80 - 10) * ONES | digits) & HIGH;
    }

    private static void lines(byte[] bytes, int length) {
        int count = 0;
        for (int i = 0; i < length; i += 8) {
            long zeros = (long) LONGS.get(bytes, i) ^ '\n' * ONES;
            count += Long.bitCount(~((zeros & ~HIGH) + ~HIGH | zeros) & HIGH);
        }
        total += count;
    }

    private static void cells(byte[] bytes, int length) {
        int count = 0;
        for (int at = 0; at < length; at++) {
            long others = noDigits((long) LONGS.get(bytes, at));
            int end = Long.numberOfTrailingZeros(others) >>> 3;
            if (bytes[at + end] == '.') {
                others &= others - 1;
                end = Long.numberOfTrailingZeros(others) >>> 3;
            }
            at += end;
            while (bytes[at] != ',' && bytes[at] != '\n') {
                at++;
            }
            count++;
        }
        total += count;
    }

    private static void numbers(byte[] bytes, int length) {
        double sum = 0;
        for (int at = 0; at < length; at++) {
            long word = (long) LONGS.get(bytes, at);
            long others = noDigits(word);
            int digits = Long.numberOfTrailingZeros(others) >>> 3;
            int end = digits;
            int decimals = 0;
            if (bytes[at + digits] == '.') {
                long before = (1L << 8 * digits) - 1;
                word = word & before | word >>> 8 & ~before;
                end = Long.numberOfTrailingZeros(others & others - 1) >>> 3;
                decimals = end - 1 - digits;
                digits = end - 1;
            }
            long units = (word ^ '0' * ONES) << 64 - 8 * digits;
            long pairs = units * 10 + (units >>> 8);
            long number = (pairs & PAIRS) * (100 + (1_000_000L << 32)) + (pairs >>> 16 & PAIRS) * (1 + (10_000L << 32)) >>> 32;
            at += end;
            while (bytes[at] != ',' && bytes[at] != '\n') {
                at++; // longer than eight characters: never in this log
            }
            sum += number / TENS[decimals];
        }
        total += sum;
    }
}
