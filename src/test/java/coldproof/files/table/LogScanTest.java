package coldproof.files.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.quantity.Refused;
import coldproof.trace.RowSink;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.SequenceInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The fast way through a log, against the plain one and against {@code Double.parseDouble}. */
@Timeout(60)
class LogScanTest {
    private static final String[] ODD_CELLS = {"", " ", "-", "--", "-0", "+5", ".", "5.", ".5", "-.5", "1e3", "1.5E-2", "1e", "N/A", "nan", "\"\"", "\"", "\"7",
        "7\"", "\"12.25\"", "\"-3\"", "\"1234567890.125\"", "\"a\"b\"", "\" 8 \"", " 9", "9 ", "1.2.3", "1,5", "1,500", "12 W", "900 mW", "71.4 °C", "\u22123.5",
        "12345678", "1234567.8", "1234567.8.9", "12345678.", "-1234567.", "123456.78", "99999999", "00000001", "123456789012345", "1234567890123456", "0.12345678901234567", "1e999", "0000.0000",
        "#", "x#y", "\t", "12:00:03", "2031-02-08T13:25:37.003Z", "8.000000000", "-12345678", "-1234.567", "1\u00a0000", "3.14abc", "\0", "(5)"};

    /** What a sink was told, in its order. */
    private static final class Told implements RowSink {
        final List<String> all = new ArrayList<>();

        @Override
        public void row(long line, double[] values) {
            all.add(line + " " + Arrays.toString(values));
        }

        @Override
        public void unreadable(long line, int column, String cell) {
            all.add(line + " cell " + column + ": " + cell);
        }

        @Override
        public void skipped(long line, String why) {
            all.add(line + " " + why);
        }
    }

    private static List<String> scan(LogHead head, int[] wanted, String text, int hands) throws IOException {
        Told told = new Told();
        new LogScan(blocks(text, head), head, wanted, told, bytes -> {}).run(hands);
        return told.all;
    }

    private static LogBlocks blocks(String text, LogHead head) {
        return new LogBlocks(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)), head.firstDataLine() - 1);
    }

    private static String anyCell(SplittableRandom random, char mark) {
        return switch (random.nextInt(6)) {
            case 0 -> ODD_CELLS[random.nextInt(ODD_CELLS.length)];
            case 1 -> Integer.toString(random.nextInt(-50, 5000));
            default -> String.format(Locale.ROOT, "%." + random.nextInt(5) + "f", (random.nextDouble() - 0.2) * Math.pow(10, random.nextInt(7))).replace('.', mark);
        };
    }

    /** Sound first lines, which say how the log is laid out, and then anything: short and long lines, odd cells, stray line ends. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
    void tellsWhatThePlainReadingTells(long seed) throws IOException {
        SplittableRandom random = new SplittableRandom(seed);
        boolean comma = random.nextInt(3) == 0;
        char mark = comma ? ',' : '.';
        char delimiter = comma ? ';' : ",;\t|".charAt(random.nextInt(4));
        boolean stamped = random.nextBoolean();
        List<String> lines = new ArrayList<>(List.of("made by hand", String.join("" + delimiter, "time", "power [W]", "note", "die [°C]", "clock")));
        int rows = random.nextBoolean() ? 20_000 : 3000;
        for (int i = 0; i < rows; i++) {
            String time = stamped ? String.format(Locale.ROOT, "%02d:%02d:%02d", i / 3600, i / 60 % 60, i % 60) : Integer.toString(i);
            List<String> cells = new ArrayList<>(List.of(time, "15" + mark + "25", "x", "7" + mark + "5", "3600"));
            if (i > 20) {
                for (int change = random.nextInt(4); change > 0; change--) {
                    cells.set(random.nextInt(5), anyCell(random, mark));
                }
                int width = random.nextInt(12) == 0 ? random.nextInt(1, 8) : 5;
                cells = IntStream.range(0, width).mapToObj(j -> j % 5).map(cells::get).toList();
            }
            lines.add(random.nextInt(500) == 0 ? lines.get(1) : random.nextInt(500) == 0 ? "  # pause" : String.join("" + delimiter, cells));
        }
        StringBuilder text = new StringBuilder();
        String usual = random.nextBoolean() ? "\n" : random.nextBoolean() ? "\r\n" : "\r";
        lines.forEach(line -> text.append(line).append(random.nextInt(300) == 0 ? "\r" : random.nextInt(300) == 0 ? "\n\n" : usual));
        String log = random.nextBoolean() ? text.toString() : text.toString().strip();
        LogHead head = LogHead.of("log", String.join("\n", lines.subList(0, 20)));
        assertEquals(delimiter, head.delimiter());
        int[] wanted = {0, 4, 1, 3};
        Told plain = new Told();
        new PlainLogReading(head, wanted, plain).read(log);
        assertEquals(plain.all, scan(head, wanted, log, 1), "seed " + seed);
        assertEquals(plain.all, scan(head, wanted, log, 3), "seed " + seed + ", three hands");
    }

    private static void assertReadsExactly(List<String> decimals) throws IOException {
        StringBuilder text = new StringBuilder("t,a\n");
        for (int i = 0; i < decimals.size(); i++) {
            text.append(i).append(',').append(decimals.get(i)).append('\n');
        }
        LogHead head = LogHead.of("log", "t,a\n0,1\n1,2.5\n2,3\n");
        int[] next = {0};
        RowSink exact = new RowSink() {
            @Override
            public void row(long line, double[] values) {
                String decimal = decimals.get(next[0]++);
                assertEquals(Double.doubleToRawLongBits(Double.parseDouble(decimal)), Double.doubleToRawLongBits(values[1]), decimal);
            }

            @Override
            public void unreadable(long line, int column, String cell) {
                throw new AssertionError(line + ": " + cell);
            }

            @Override
            public void skipped(long line, String why) {
                throw new AssertionError(line + ": " + why);
            }
        };
        new LogScan(blocks(text.toString(), head), head, new int[] {0, 1}, exact, bytes -> {}).run(1);
        assertEquals(decimals.size(), next[0]);
    }

    /** Every shape of a decimal of one to seven digits, where each digit stands in each place. */
    @Test
    void shortDecimalsAreReadExactly() throws IOException {
        List<String> decimals = new ArrayList<>();
        for (int digits = 1; digits <= 7; digits++) {
            for (int whole = 0; whole <= digits; whole++) {
                for (char filler : "0199".toCharArray()) {
                    for (int place = 0; place < digits; place++) {
                        for (char digit = '0'; digit <= '9'; digit++) {
                            StringBuilder decimal = new StringBuilder(("" + filler).repeat(digits));
                            decimal.setCharAt(place, digit);
                            decimals.add(decimal.insert(whole, '.').toString());
                            decimals.add("-" + (whole == digits ? decimal.substring(0, digits) : decimal));
                        }
                    }
                }
            }
        }
        assertReadsExactly(decimals);
    }

    /** Random decimals, and doubles written in full and cut after any digit, which lie near the border between two doubles. */
    private static void randomDecimals(SplittableRandom random, int count) throws IOException {
        List<String> decimals = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            double value = random.nextBoolean() ? Double.longBitsToDouble(random.nextLong(0x3E00_0000_0000_0000L, 0x4400_0000_0000_0000L))
                    : random.nextLong(1L << random.nextInt(1, 52)) / Math.pow(10, random.nextInt(8));
            String text = new java.math.BigDecimal(value).toPlainString();
            decimals.add((random.nextBoolean() ? "-" : "") + text.substring(0, Math.min(text.length(), random.nextInt(1, 22))));
        }
        assertReadsExactly(decimals);
    }

    @Test
    void randomDecimalsAreReadExactly() throws IOException {
        randomDecimals(new SplittableRandom(3), 200_000);
    }

    @Test
    @Tag("long")
    void millionsOfDecimalsAreReadExactly() throws IOException {
        for (int seed = 100; seed < 120; seed++) {
            randomDecimals(new SplittableRandom(seed), 500_000);
        }
    }

    /** A failure of the sink in the middle ends all hands and comes out; none waits for a block that is never told. */
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 4})
    void aFailureInTheMiddleComesOut(int hands) {
        LogHead head = LogHead.of("log", "t,a\n0,1\n1,2\n");
        RowSink failing = new RowSink() {
            @Override
            public void row(long line, double[] values) {
                if (line == 300_000) {
                    throw new IllegalStateException("full");
                }
            }

            @Override
            public void unreadable(long line, int column, String cell) {}

            @Override
            public void skipped(long line, String why) {}
        };
        LogScan scan = new LogScan(blocks("t,a\n" + "1,2\n".repeat(600_000), head), head, new int[] {0, 1}, failing, bytes -> {});
        String message = assertThrows(IllegalStateException.class, () -> scan.run(hands)).getMessage();
        assertTrue(message.endsWith("full"), message); // one from another thread comes wrapped in one of its own kind
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 4})
    void aDriveThatFailsIsAnInputFailure(int hands) {
        LogHead head = LogHead.of("log", "t,a\n0,1\n1,2\n");
        InputStream broken = new InputStream() {
            @Override
            public int read() throws IOException {
                throw new IOException("the drive is gone");
            }
        };
        InputStream in = new SequenceInputStream(new ByteArrayInputStream("1,2\n".repeat(300_000).getBytes(StandardCharsets.UTF_8)), broken);
        LogScan scan = new LogScan(new LogBlocks(in, 0), head, new int[] {0, 1}, new Told(), bytes -> {});
        assertEquals("the drive is gone", assertThrows(IOException.class, () -> scan.run(hands)).getMessage());
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2})
    void aLineWithoutEndIsRefusedByItsNumber(int hands) {
        LogHead head = LogHead.of("log", "t,a\n0,1\n1,2\n");
        String text = "t,a\n" + "1,2\n".repeat(200_000) + "x".repeat(2 * LogBlocks.LONGEST_LINE) + "\n";
        Refused refused = assertThrows(Refused.class, () -> scan(head, new int[] {0, 1}, text, hands));
        assertTrue(refused.problems().get(0).what().startsWith("line 200002 is longer than 16 MB"), refused.getMessage());
    }

    @Test
    void aLongLineThatEndsIsRead() throws IOException {
        LogHead head = LogHead.of("log", "t,a\n0,1\n1,2\n");
        List<String> told = scan(head, new int[] {0, 1}, "t,a\n1,2\n2," + " ".repeat(3_000_000) + "7\n3,4", 2);
        assertEquals(List.of("2 [1.0, 2.0]", "3 [2.0, 7.0]", "4 [3.0, 4.0]"), told);
    }

    /** Lines before the first data may fill more than a block. */
    @Test
    void aLongPreambleIsLeftOut() throws IOException {
        LogHead laidOut = LogHead.of("log", "t,a\n0,1\n1,2\n");
        LogHead head = new LogHead("log", laidOut.columns(), ',', false, 4);
        List<String> told = scan(head, new int[] {0, 1}, "y".repeat(700_000) + "\r\n" + "1,1\n".repeat(2) + "5,6\n", 2);
        assertEquals(List.of("4 [5.0, 6.0]"), told);
    }
}
