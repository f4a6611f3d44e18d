package coldproof.files.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.quantity.Refused;
import coldproof.trace.ColumnSample.CellKind;
import coldproof.trace.RowSink;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.concurrent.atomic.AtomicLong;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class LogReaderTest {
    @TempDir
    Path folder;

    /** Keeps everything it is given. */
    private static final class Keeper implements RowSink {
        final List<double[]> rows = new ArrayList<>();
        final List<Long> lines = new ArrayList<>();
        final List<String> remarks = new ArrayList<>();

        @Override
        public void row(long line, double[] values) {
            lines.add(line);
            rows.add(values.clone());
        }

        @Override
        public void unreadable(long line, int column, String cell) {
            remarks.add(line + " " + column + " " + cell);
        }

        @Override
        public void skipped(long line, String why) {
            remarks.add(line + " " + why);
        }
    }

    private Path write(String text, Charset charset) throws IOException {
        return Files.write(folder.resolve("log.csv"), text.getBytes(charset));
    }

    private Keeper scan(String text, int... wanted) throws IOException {
        return scan(write(text, StandardCharsets.UTF_8), wanted);
    }

    private static Keeper scan(Path file, int... wanted) {
        Keeper keeper = new Keeper();
        LogReader.scan(file, LogReader.head(file), wanted, keeper, bytes -> {});
        return keeper;
    }

    /** A line may end just where a filled buffer does: with lines of 16 bytes, one of 16 lengths of the heading makes it so. */
    @Test
    void nothingIsLostWhereALineEndsWithTheBuffer() throws IOException {
        int rows = 40_000; // 640 kB: more than any buffer
        for (int pad = 0; pad < 16; pad++) {
            StringBuilder text = new StringBuilder("time_s,power_w").append("x".repeat(pad)).append('\n');
            for (int i = 0; i < rows; i++) {
                text.append(1_000_000 + i).append(",28.1234\n");
            }
            int[] count = {0};
            Path file = write(text.toString(), StandardCharsets.UTF_8);
            LogReader.scan(file, LogReader.head(file), new int[] {0, 1}, new RowSink() {
                @Override
                public void row(long line, double[] values) {
                    count[0]++;
                }

                @Override
                public void unreadable(long line, int column, String cell) {
                    throw new AssertionError(line + ": " + cell);
                }

                @Override
                public void skipped(long line, String why) {
                    throw new AssertionError(line + ": " + why);
                }
            }, bytes -> {});
            assertEquals(rows, count[0], "heading " + pad + " letters longer");
        }
    }

    /** Between commas a quoted comma is a decimal one, unless a number has a point or all have three digits behind it. */
    @Test
    void quotedDecimalCommasBetweenCommasAreRead() throws IOException {
        Keeper keeper = scan("time,power,clock\n\"0,0\",\"15,25\",\"3,612\"\n\"1,0\",\"-0,5\",\"3,598\"\n", 0, 1, 2);
        assertEquals(List.of(0.0, 15.25, 3.612), list(keeper.rows.get(0)));
        assertEquals(List.of(1.0, -0.5, 3.598), list(keeper.rows.get(1)));
        assertEquals(false, LogReader.head(write("time,power,fan\n0,15.25,\"3,612\"\n1,15.5,\"3,598\"\n", StandardCharsets.UTF_8)).decimalComma());
        assertEquals(false, LogReader.head(write("time,power,fan\n0,15,\"3,612\"\n1,15,\"3,598\"\n", StandardCharsets.UTF_8)).decimalComma());
    }

    @Test
    void degreesInCellsOfLatin1AreRead() throws IOException {
        Keeper keeper = scan(write("time,die\n0,75.2 °F\n1,77.0 °F\n", StandardCharsets.ISO_8859_1), 0, 1);
        assertEquals(List.of(0.0, 75.2), list(keeper.rows.get(0)));
        assertEquals(List.of(), keeper.remarks);
    }

    @Test
    void readsOnlyTheColumnsAskedForInTheOrderAskedFor() throws IOException {
        Keeper keeper = scan("time,note,power,clock\n0,\"a, b\",15.25,3600\n1,c,-0.5,3500\n", 0, 3, 2);
        assertEquals(2, keeper.rows.size());
        assertEquals(List.of(2L, 3L), keeper.lines);
        assertEquals(List.of(0.0, 3600.0, 15.25), list(keeper.rows.get(0)));
        assertEquals(List.of(1.0, 3500.0, -0.5), list(keeper.rows.get(1)));
    }

    @Test
    void unreadableCellsAndLinesAreToldWithTheirLines() throws IOException {
        Keeper keeper = scan("time,power\n0,15\n1,abc\n2,N/A\ntime,power\n# pause\n\n,,\nx,3\n3,\n4,1.234.5\n5,16\n", 0, 1);
        assertEquals(List.of("3 1 abc", "3 has a time and nothing else", "4 has a time and nothing else", "5 repeats the heading",
                "9 has no readable time", "10 has a time and nothing else", "11 1 1.234.5", "11 has a time and nothing else"), keeper.remarks);
        assertEquals(List.of(2L, 12L), keeper.lines);
    }

    @Test
    void unitsInCellsAreConvertedToTheUnitOfTheColumn() throws IOException {
        Path file = write("time;power;clock\n0 s;15,5 W;3,6 GHz\n1 s;900 mW;950 MHz\n", StandardCharsets.UTF_8);
        LogHead head = LogReader.head(file);
        assertEquals(List.of("s", "W", "GHz"), head.columns().stream().map(c -> c.unit()).toList());
        Keeper keeper = scan(file, 0, 1, 2);
        assertEquals(List.of(1.0, 0.9, 0.95), list(keeper.rows.get(1)));
    }

    @ParameterizedTest
    @ValueSource(strings = {"UTF-8", "UTF-16LE", "UTF-16BE", "ISO-8859-1"})
    void everyEncodingGivesTheSameRows(String charset) throws IOException {
        String mark = charset.startsWith("UTF") ? "\ufeff" : "";
        Path file = write(mark + "Zeit [s];Gehäuse [°C];Leistung [W]\r\n0,0;21,5;3\r\n1,0;21,6 °C;4,5\r\n", Charset.forName(charset));
        Keeper keeper = scan(file, 0, 1, 2);
        assertEquals(List.of(0.0, 21.5, 3.0), list(keeper.rows.get(0)));
        assertEquals(4.5, keeper.rows.get(1)[2]);
        assertEquals("Gehäuse [°C]", LogReader.head(file).columns().get(1).name());
    }

    @Test
    void aPackedLogIsUnpacked() throws IOException {
        Path file = folder.resolve("log.csv.gz");
        try (OutputStream out = new GZIPOutputStream(Files.newOutputStream(file))) {
            out.write("time,power\n0,1\n1,2.5\n".getBytes(StandardCharsets.UTF_8));
        }
        assertEquals(2.5, scan(file, 0, 1).rows.get(1)[1]);
    }

    /** Oracle: java.time for ISO stamps with zone; by hand for the others. */
    @ParameterizedTest
    @CsvSource({
        "2031-02-13T14:40:22.007+01:00, DATE_TIME", "2031-02-08T13:25:37.003Z, DATE_TIME", "1969-12-31T23:59:59.5Z, DATE_TIME",
        "2000-02-29T00:00:00Z, DATE_TIME", "2100-03-01T12:30:00-05:30, DATE_TIME"
    })
    void readsIsoStampsAsTheCalendarDoes(String stamp, CellKind kind) {
        TimeText time = new TimeText();
        byte[] bytes = stamp.getBytes(StandardCharsets.UTF_8);
        OffsetDateTime expected = OffsetDateTime.parse(stamp);
        assertEquals(expected.toEpochSecond() + expected.getNano() / 1e9, time.seconds(bytes, 0, bytes.length), 5e-7); // spacing of doubles
        assertEquals(kind, time.kind());
    }

    @ParameterizedTest
    @CsvSource({
        "09:21:21.004, 33681.004", "00:01:15, 75", "23:59:59.5, 86399.5", "1:02:03 PM, 46923", "12:00:01 AM, 1", "12:00:00 PM, 43200",
        "14.02.2031 09:21:21, 33681", "02/14/2031 9:21:21 PM, 76881", "15:45.2, 945.2", "'\"09:21:21\"', 33681", "123:00:01, 442801", "12:60:00, NaN",
        "hello, NaN", "2031-13-01T00:00:00, NaN", "12, NaN", "'', NaN", "09:21:21 xyz, NaN"
    })
    void readsTimesOfDay(String stamp, double seconds) {
        byte[] bytes = stamp.getBytes(StandardCharsets.UTF_8);
        assertEquals(seconds, new TimeText().seconds(bytes, 0, bytes.length), 1e-9);
    }

    @ParameterizedTest
    @CsvSource({
        "15, false, 15", "1.5e3, false, 1500", "'1,5', true, 1.5", "'1,5', false, 1.5", "'1,500', false, NaN", "'0,500', false, 0.5",
        "'1.234,5', true, NaN", "71.4 °C, false, 71.4", "−3.5, false, -3.5", "12 parsecs, false, NaN", "1e, false, NaN", "., false, NaN",
        "1e999, false, NaN", "0.12345678901234567, false, 0.12345678901234567"
    })
    void readsNumbersTheLongWay(String cell, boolean comma, double expected) {
        assertEquals(expected, CellNumber.of(cell, comma, null), 0);
    }

    /** Oracle: the general CSV library and Double.parseDouble, on random logs longer than the buffer. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void agreesWithTheGeneralLibraryOnRandomLogs(long seed) throws IOException {
        SplittableRandom random = new SplittableRandom(seed);
        boolean comma = random.nextBoolean();
        char delimiter = comma ? ';' : ",;\t|".charAt(random.nextInt(4));
        String end = random.nextBoolean() ? "\n" : "\r\n";
        StringBuilder text = new StringBuilder("t" + delimiter + "a" + delimiter + "note" + delimiter + "b" + end);
        for (int i = 0; i < 12_000; i++) {
            text.append(i).append(delimiter).append(number(random, comma)).append(delimiter)
                    .append(random.nextBoolean() ? "\"x" + delimiter + "\"\"y\"\"\"" : "z").append(delimiter).append(number(random, comma)).append(end);
        }
        Keeper keeper = scan(text.toString(), 0, 1, 3);
        int row = 0;
        for (CsvRecord record : CsvReader.builder().fieldSeparator(delimiter).ofCsvRecord(text.toString())) {
            if (record.getStartingLineNumber() > 1) {
                double[] read = keeper.rows.get(row++);
                String place = "seed " + seed;
                assertEquals(Double.parseDouble(record.getField(1).replace(',', '.')), read[1], 0, place);
                assertEquals(Double.parseDouble(record.getField(3).replace(',', '.')), read[2], 0, place);
                assertEquals(record.getStartingLineNumber(), keeper.lines.get(row - 1));
            }
        }
        assertEquals(12_000, row);
        assertEquals(List.of(), keeper.remarks);
    }

    private static String number(SplittableRandom random, boolean comma) {
        double value = (random.nextDouble() - 0.5) * Math.pow(10, random.nextInt(12));
        String text = switch (random.nextInt(4)) {
            case 0 -> String.format(Locale.ROOT, "%.0f", value);
            case 1 -> String.format(Locale.ROOT, "%." + random.nextInt(1, 12) + "f", value);
            case 2 -> Double.toString(value);
            default -> "\"" + String.format(Locale.ROOT, "%.3f", value) + "\"";
        };
        return comma ? text.replace('.', ',') : text;
    }

    @Test
    void linesAcrossTheBufferAreWhole() throws IOException {
        StringBuilder text = new StringBuilder("t,a\n");
        String padding = " ".repeat(700);
        for (int i = 0; i < 3000; i++) {
            text.append(i).append(',').append(padding).append(i * 0.5).append('\n');
        }
        Keeper keeper = scan(text.toString().strip(), 0, 1);
        assertEquals(3000, keeper.rows.size());
        for (int i = 0; i < 3000; i++) {
            assertEquals(i * 0.5, keeper.rows.get(i)[1]);
        }
    }

    @Test
    void progressReachesTheSizeOfTheFile() throws IOException {
        Path file = write("t,a\n" + "1,2\n".repeat(200_000), StandardCharsets.UTF_8);
        AtomicLong last = new AtomicLong();
        LogReader.scan(file, LogReader.head(file), new int[] {0, 1}, new Keeper(), bytes -> {
            assertTrue(bytes >= last.get());
            last.set(bytes);
        });
        assertEquals(Files.size(file), last.get());
    }

    @Test
    void whatIsNoLogIsRefused() throws IOException {
        assertThrows(Refused.class, () -> LogReader.head(folder.resolve("nowhere.csv")));
        assertThrows(Refused.class, () -> LogReader.head(folder));
        Path empty = write("", StandardCharsets.UTF_8);
        assertThrows(Refused.class, () -> LogReader.head(empty));
        Path damaged = Files.write(folder.resolve("b.gz"), new byte[] {0x1f, (byte) 0x8b, 1, 2, 3});
        assertThrows(Refused.class, () -> LogReader.head(damaged));
    }

    /** Whatever is in the file: rows, remarks or a refusal; never another failure, never endless. */
    @ParameterizedTest
    @ValueSource(longs = {21, 22, 23, 24})
    void damagedLogsAreReadOrRefused(long seed) throws IOException {
        SplittableRandom random = new SplittableRandom(seed);
        String plain = "time_s,\"die [°C]\",power\n0,45.5,12\n1,46,\"13\"\n2,N/A,14\n3,48,15 W\n";
        for (int i = 0; i < 400; i++) {
            byte[] bytes = plain.repeat(1 + random.nextInt(3)).getBytes(StandardCharsets.UTF_8);
            for (int flips = random.nextInt(12); flips > 0; flips--) {
                bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
            }
            Path file = Files.write(folder.resolve("fuzz.csv"), bytes);
            try {
                LogHead head = LogReader.head(file);
                int[] wanted = new int[head.columns().size()];
                for (int j = 0; j < wanted.length; j++) {
                    wanted[j] = j;
                }
                LogReader.scan(file, head, wanted, new Keeper(), read -> {});
            } catch (Refused refused) {
                assertFalse(refused.problems().isEmpty(), "seed " + seed);
            }
        }
    }

    private static List<Double> list(double[] values) {
        List<Double> list = new ArrayList<>();
        for (double value : values) {
            list.add(value);
        }
        return list;
    }
}
