package coldproof.face.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.BufferedReader;
import java.io.PrintWriter;
import java.io.StringReader;
import java.io.StringWriter;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

class ProgressLineTest {
    private static final long SECOND = 1_000_000_000L;
    private final StringWriter err = new StringWriter();
    private final AtomicLong nanos = new AtomicLong(Long.MAX_VALUE - SECOND); // such clocks may run over

    private Streams streams(boolean interactive) {
        return new Streams(new BufferedReader(new StringReader("")), new PrintWriter(new StringWriter()), new PrintWriter(err), interactive, 24, false);
    }

    private void work(boolean interactive) {
        try (ProgressLine line = new ProgressLine(streams(interactive), nanos::get)) {
            line.tell(() -> "too early");
            nanos.addAndGet(SECOND);
            line.tell(() -> "read 1 of 12 traces");
            line.tell(() -> "too early");
            nanos.addAndGet(2 * SECOND);
            line.tell(() -> "half");
        }
    }

    @Test
    void atATerminalOneLineIsWrittenOverAndEnded() {
        work(true);
        assertEquals("\rread 1 of 12 traces\rhalf" + " ".repeat(15) + System.lineSeparator(), err.toString());
    }

    @Test
    void intoAPipeGoesALineEachSecond() {
        work(false);
        assertEquals("read 1 of 12 traces\nhalf\n", err.toString());
    }

    @Test
    void quickWorkSaysNothing() {
        try (ProgressLine line = new ProgressLine(streams(true), nanos::get)) {
            line.tell(() -> "done");
        }
        assertEquals("", err.toString());
    }

    @Test
    void aReadingShowsItsShareAndItsRate() {
        try (ProgressLine line = new ProgressLine(streams(false), nanos::get)) {
            nanos.addAndGet(2 * SECOND);
            new ReadingProgress(line, 200_000_000).accept(50_000_000);
        }
        assertEquals("[######..................]  25 %  50 of 200 MB, 25 MB/s\n", err.toString());
    }
}
