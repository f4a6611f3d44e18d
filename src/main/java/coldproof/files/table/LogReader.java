package coldproof.files.table;

import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import coldproof.trace.RowSink;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.LongConsumer;

/**
 * Reads telemetry of any size from delimited text, plain or packed with gzip: first the head, from which a person or a guess says which
 * columns are wanted, then row after row into a {@link RowSink}, in constant memory.
 */
public final class LogReader {
    private static final String EXPECTED = "a log of telemetry";
    private static final int SAMPLE = 1 << 20; // bytes of text looked at before reading: the whole of a usual trial

    private static final long LONG = 4L << 20; // bytes in the file from which several threads repay the trouble of starting them
    private static final int MOST_HANDS = 4; // rows are taken one after the other, in about a quarter of the time that finding them takes

    private LogReader() {}

    /**
     * Looks at the beginning of a log.
     *
     * @throws Refused if the file is missing, a folder or empty, or is no delimited text
     * @throws UncheckedIOException if reading fails for a reason outside the file
     */
    public static LogHead head(Path file) {
        return Unpacked.read(file, EXPECTED, in -> {
            byte[] sample = in.readNBytes(SAMPLE);
            TextEncoding encoding = TextEncoding.of(sample, sample.length);
            String text = encoding.decode(sample);
            if (sample.length == SAMPLE) {
                int end = Math.max(text.lastIndexOf('\n'), text.lastIndexOf('\r'));
                text = end > 0 ? text.substring(0, end + 1) : text;
            }
            LogHead head = LogHead.of(file.toString(), text);
            if (head.columns().isEmpty()) {
                throw refuse(file, text.isBlank() ? "is empty" : "is no delimited text", "a line of column names and rows of numbers",
                        "Give the log as delimited text.");
            }
            return head;
        });
    }

    /**
     * Reads all rows.
     *
     * @param head what {@link #head} found in this file
     * @param wanted which columns to read, first is 0; the first of them is the time
     * @param bytesRead told now and then how many bytes of text were read; for a packed file more than the file has
     * @throws Refused if the file is gone or holds a line of unreasonable length
     * @throws UncheckedIOException if reading fails for a reason outside the file
     */
    public static void scan(Path file, LogHead head, int[] wanted, RowSink sink, LongConsumer bytesRead) {
        for (int column : wanted) {
            if (column < 0 || column >= head.columns().size()) {
                throw new IllegalArgumentException("column " + column + " is outside [0, " + head.columns().size() + ")");
            }
        }
        Unpacked.read(file, EXPECTED, in -> {
            in.mark(SAMPLE + 1);
            byte[] sample = in.readNBytes(SAMPLE);
            TextEncoding encoding = TextEncoding.of(sample, sample.length);
            in.reset();
            in.skipNBytes(encoding.markBytes());
            boolean wide = encoding.charset() != StandardCharsets.UTF_8 && encoding.charset() != StandardCharsets.ISO_8859_1;
            LogBlocks blocks = new LogBlocks(wide ? new Utf8Stream(in, encoding.charset()) : in, head.firstDataLine() - 1);
            new LogScan(blocks, head, wanted, sink, bytesRead).run(hands(file));
            return null;
        });
    }

    /** Bytes of text in a log; 0 when that is not known without reading it. */
    public static long plainBytes(Path file) {
        try {
            return Files.isRegularFile(file) && !file.toString().endsWith(".gz") ? Files.size(file) : 0;
        } catch (IOException unknown) {
            return 0; // whatever is wrong shows when the file is read
        }
    }

    private static int hands(Path file) throws IOException {
        return Files.size(file) < LONG ? 1 : Math.min(MOST_HANDS, Runtime.getRuntime().availableProcessors());
    }

    private static Refused refuse(Path file, String what, String expected, String remedy) {
        return new Refused(Problem.of(what, Place.named(file.toString()), expected, remedy));
    }
}
