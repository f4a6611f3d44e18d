package coldproof.files.table;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TableReaderTest {
    private static final String PLAIN = "trial,session,ambient,rate\n1,1,room,51.13\n2,1,room,50.92\n3,2,chilled,52.4\n";
    private static final double[] RATES = {51.13, 50.92, 52.4};

    private static Table read(String text) {
        return TableReader.read("trials.csv", text.getBytes(StandardCharsets.UTF_8));
    }

    private static double[] rates(String text) {
        Table table = read(text);
        return table.numbers(table.column("rate", "--metric"));
    }

    private static Problem refusal(Runnable reading) {
        return assertThrows(Refused.class, reading::run).problems().get(0);
    }

    @Test
    void readsCommaAndPoint() {
        assertArrayEquals(RATES, rates(PLAIN));
    }

    @Test
    void readsSemicolonAndDecimalComma() {
        assertArrayEquals(RATES, rates(PLAIN.replace(',', ';').replace('.', ',')));
    }

    @Test
    void readsSemicolonWithManyDecimalCommas() {
        assertArrayEquals(new double[] {3.5, 4.5},
                rates("trial;a;b;c;d;rate\n1;1,5;2,5;3,5;4,5;3,5\n2;1,5;2,5;3,5;4,5;4,5\n"));
    }

    @Test
    void readsTabAndBar() {
        assertArrayEquals(RATES, rates(PLAIN.replace(',', '\t')));
        assertArrayEquals(RATES, rates(PLAIN.replace(',', '|')));
    }

    @Test
    void readsCommaWithQuotedDecimalComma() {
        assertArrayEquals(RATES, rates("trial,rate\n1,\"51,13\"\n2,\"50,92\"\n3,\"52,4\"\n"));
    }

    @Test
    void readsEveryLineEnd() {
        assertArrayEquals(RATES, rates(PLAIN.replace("\n", "\r\n")));
        assertArrayEquals(RATES, rates(PLAIN.replace("\n", "\r")));
        assertArrayEquals(RATES, rates(PLAIN.strip()));
    }

    @ParameterizedTest
    @ValueSource(strings = {"UTF-8", "UTF-16LE", "UTF-16BE", "ISO-8859-1"})
    void readsEveryEncodingWithoutMark(String charset) {
        String text = "trial,Lüfter [°C],rate\n1,größe,51.13\n2,ä,50.92\n3,b,52.4\n";
        Table table = TableReader.read("t", text.getBytes(Charset.forName(charset)));
        assertEquals(List.of("trial", "Lüfter [°C]", "rate"), table.columns());
        assertEquals("größe", table.rows().get(0).text(1));
        assertArrayEquals(RATES, table.numbers(2));
    }

    @ParameterizedTest
    @ValueSource(strings = {"UTF-8", "UTF-16LE", "UTF-16BE"})
    void skipsTheByteOrderMark(String charset) {
        Table table = TableReader.read("t", ("\ufeff" + PLAIN).getBytes(Charset.forName(charset)));
        assertEquals("trial", table.columns().get(0));
        assertEquals(3, table.rows().size());
    }

    @Test
    void skipsRemarksPreambleBlankAndPaddedLines() {
        Table table = read("Bench log\nDate: 2031-01-14\n\n# a \"remark, with a stray quote\n" + PLAIN.replace("2,1", "\n# pause\n,,,\n2,1"));
        assertEquals(List.of("trial", "session", "ambient", "rate"), table.columns());
        assertArrayEquals(RATES, table.numbers(3));
        assertEquals(List.of(6, 10, 11), table.rows().stream().map(Table.Row::line).toList());
    }

    @Test
    void takesNamesFromARemarkWhenNumbersFollowAtOnce() {
        Table table = read("# run 7\n# trial, rate\n1, 51.13\n2, 50.92\n");
        assertEquals(List.of("trial", "rate"), table.columns());
        assertEquals(2, table.rows().size());
    }

    @Test
    void aTrailingDelimiterIsNoColumn() {
        Table table = read("trial,rate,\n1,51.13,\n2,50.92,\n");
        assertEquals(List.of("trial", "rate"), table.columns());
        assertArrayEquals(new double[] {51.13, 50.92}, table.numbers(1));
    }

    @Test
    void aLineOfUnitsIsNoData() {
        Table table = read("trial;rate\n;[frames/s]\n1;51,13\n");
        assertEquals(List.of("", "[frames/s]"), table.units());
        assertArrayEquals(new double[] {51.13}, table.numbers(1));
    }

    @Test
    void aRepeatedHeadingIsSkipped() {
        assertArrayEquals(RATES, rates(PLAIN.replace("3,2", "trial,session,ambient,rate\n3,2")));
    }

    @Test
    void namesMatchInAnyCaseAndWithoutTheUnit() {
        Table table = read("trial,Render Rate [frames/s],ambient\n1,51.13,room\n");
        assertEquals(1, table.column("render rate [FRAMES/S]", "--metric"));
        assertEquals(1, table.column("render_rate", "--metric"));
        assertEquals(2, table.column("Ambient", "--factor"));
    }

    @Test
    void anExactNameWinsOverOneInAnotherCase() {
        assertEquals(1, read("Rate,rate\n1,2\n").column("rate", "--metric"));
    }

    @Test
    void anUnknownColumnIsRefusedWithTheNearest() {
        Problem problem = refusal(() -> read(PLAIN).column("ambeint", "--factor"));
        assertEquals("--factor", problem.where().text());
        assertEquals(List.of("ambient"), problem.nearest());
        assertTrue(problem.expected().contains("trial, session, ambient, rate"), problem.expected());
    }

    @Test
    void aNameThatStandsTwiceIsRefusedAndCanBeNumbered() {
        Table table = read("t,temperature,temperature\n1,20,30\n");
        Problem problem = refusal(() -> table.column("temperature", "--metric"));
        assertTrue(problem.remedy().contains("temperature#2"), problem.remedy());
        assertEquals(2, table.column("temperature#2", "--metric"));
    }

    @Test
    void aWordInTheMetricColumnIsRefusedWithLineAndColumn() {
        Problem problem = refusal(() -> rates(PLAIN.replace("50.92", "abc")));
        assertEquals("trials.csv:3:10", problem.where().text());
        assertEquals("2,1,room,abc", problem.where().excerpt());
        assertEquals(3, problem.where().width());
        assertTrue(problem.what().contains("\"abc\"") && problem.what().contains("rate"), problem.what());
    }

    @Test
    void everyWrongCellIsReported() {
        Refused refused = assertThrows(Refused.class, () -> rates(PLAIN.replace("50.92", "abc").replace("52.4", "")));
        assertEquals(List.of("trials.csv:3:10", "trials.csv:4:13"), refused.problems().stream().map(p -> p.where().text()).toList());
    }

    @Test
    void aMissingCellIsNoNumberButMayBeAsked() {
        Table table = read("trial,rate\n1,51\n2,N/A\n3\n");
        assertTrue(table.numberIfPresent(table.rows().get(1), 1).isEmpty());
        assertTrue(table.numberIfPresent(table.rows().get(2), 1).isEmpty());
        assertEquals("trials.csv:3:3", refusal(() -> table.number(table.rows().get(1), 1)).where().text());
    }

    @Test
    void aCommaAmongPointsIsNotGuessed() {
        Problem problem = refusal(() -> rates("trial,rate\n1,\"1,500\"\n2,950.5\n"));
        assertEquals("trials.csv:2:3", problem.where().text());
        Problem thousands = refusal(() -> rates("trial,other,rate\n1,1.5,\"1,500\"\n2,2.5,\"1,612\"\n"));
        assertEquals("trials.csv:2:7", thousands.where().text());
    }

    @Test
    void anUnquotedDecimalCommaInACommaTableIsExplained() {
        Problem problem = refusal(() -> read("trial,rate\n1,50.5\n2,50.6\n3,51,13\n4,50.2\n"));
        assertEquals("trials.csv:4:6", problem.where().text());
        assertTrue(problem.remedy().contains("decimal comma"), problem.remedy());
    }

    @Test
    void anUnclosedQuoteIsRefusedWhereItsRecordBegins() {
        Problem problem = refusal(() -> read("trial,note,rate\n1,a,2\n2,\"b,3\n3,c,4\n"));
        assertEquals("trials.csv:3", problem.where().text());
    }

    @Test
    void emptyAndHeadlessFilesAreRefused() {
        assertEquals("is empty", refusal(() -> read("")).what());
        assertEquals("has no line of column names", refusal(() -> read("1,2\n3,4\n")).what());
    }

    @Test
    void aMissingFileAndAFolderAreRefused(@TempDir Path folder) {
        assertEquals("does not exist", refusal(() -> TableReader.read(folder.resolve("nowhere.csv"))).what());
        assertEquals("is a folder", refusal(() -> TableReader.read(folder)).what());
    }

    @Test
    void readsAFile(@TempDir Path folder) throws Exception {
        Path file = Files.writeString(folder.resolve("a b.csv"), PLAIN);
        assertArrayEquals(RATES, TableReader.read(file).numbers(3));
    }

    /** Oracle: the general CSV library, on tables of random cells with delimiters, quotes and line ends in them. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void splitsAsTheGeneralLibraryDoes(long seed) throws IOException {
        SplittableRandom random = new SplittableRandom(seed);
        char delimiter = ",;\t|".charAt(random.nextInt(4));
        StringWriter text = new StringWriter();
        try (CsvWriter writer = CsvWriter.builder().fieldSeparator(delimiter)
                .lineDelimiter(random.nextBoolean() ? LineDelimiter.LF : LineDelimiter.CRLF).build(text)) {
            for (int i = 0; i < 200; i++) {
                List<String> cells = new ArrayList<>();
                for (int j = 0; j < 5; j++) {
                    cells.add(randomCell(random));
                }
                writer.writeRecord(cells);
            }
        }
        List<List<String>> expected = new ArrayList<>();
        List<Integer> expectedLines = new ArrayList<>();
        for (CsvRecord record : CsvReader.builder().fieldSeparator(delimiter).skipEmptyLines(false).ofCsvRecord(text.toString())) {
            expected.add(record.getFields());
            expectedLines.add((int) record.getStartingLineNumber());
        }
        List<DelimitedLine> lines = DelimitedLine.split(text.toString(), delimiter, Integer.MAX_VALUE);
        assertEquals(expected, lines.stream().map(DelimitedLine::texts).toList(), "seed " + seed);
        assertEquals(expectedLines, lines.stream().map(DelimitedLine::line).toList(), "seed " + seed);
    }

    private static String randomCell(SplittableRandom random) {
        String alphabet = "ab1.,;|\t\"\n°é -";
        StringBuilder cell = new StringBuilder();
        for (int length = random.nextInt(7); length > 0; length--) {
            cell.append(alphabet.charAt(random.nextInt(alphabet.length())));
        }
        String text = cell.toString();
        // Blanks before a quote are cut by this reader (spreadsheets write them), and no record may look like a remark.
        return text.strip().startsWith("\"") ? "q" + text : text;
    }

    /** Whatever is read, it is read or refused with a problem; never another failure, never endless. */
    @ParameterizedTest
    @ValueSource(longs = {11, 12, 13, 14})
    void damagedFilesAreReadOrRefused(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < 500; i++) {
            byte[] bytes = PLAIN.getBytes(StandardCharsets.UTF_8);
            for (int flips = 1 + random.nextInt(8); flips > 0; flips--) {
                bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
            }
            try {
                Table table = TableReader.read("t", bytes);
                table.numbers(table.columns().size() - 1);
            } catch (Refused refused) {
                assertTrue(!refused.problems().isEmpty(), "seed " + seed);
            }
        }
    }

    /** The packed form of RFC 1952, whatever the file is called. */
    @Test
    void readsAPackedTableAndRefusesACutOne(@TempDir Path folder) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (GZIPOutputStream packed = new GZIPOutputStream(bytes)) {
            packed.write("fan,rate\nauto,50.1\n".getBytes(StandardCharsets.UTF_8));
        }
        Path file = Files.write(folder.resolve("trials.csv"), bytes.toByteArray());
        assertEquals(List.of("fan", "rate"), TableReader.read(file).columns());
        Files.write(file, Arrays.copyOf(bytes.toByteArray(), bytes.size() - 12));
        Refused refused = assertThrows(Refused.class, () -> TableReader.read(file));
        assertTrue(refused.problems().get(0).what().startsWith("is packed and damaged"), refused.getMessage());
    }
}
