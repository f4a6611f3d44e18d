package coldproof.face.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringReader;
import java.io.StringWriter;
import java.io.Writer;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StreamsTest {
    /** COLUMNS is what POSIX.1-2017 (Base Definitions, 8.3) calls the preferred width of the terminal. */
    @ParameterizedTest
    @CsvSource({"40, 40", "' 98 ', 98", "120, 120", "121, 120", "250, 120", "20, 20", "19, 20", "1, 20", "0, 80", "-100, 80", "'', 80", "wide, 80", "99999999999, 80", "1e2, 80"})
    void theTerminalsOwnWidthCountsWithinWhatCanBeRead(String said, int columns) {
        assertEquals(columns, Streams.columns(true, Optional.of(said)));
    }

    @Test
    void aPipeAndASilentEnvironmentGetTheUsualWidth() {
        assertEquals(80, Streams.columns(false, Optional.of("132")));
        assertEquals(80, Streams.columns(true, Optional.empty()));
    }

    @Test
    void anAnswerThatDoesNotGetOutIsNoSuccess() {
        Writer full = new Writer() {
            @Override
            public void write(char[] text, int from, int length) throws IOException {
                throw new IOException("No space left on device");
            }

            @Override
            public void flush() {}

            @Override
            public void close() {}
        };
        StringWriter err = new StringWriter();
        Streams streams = new Streams(new BufferedReader(new StringReader("")), new PrintWriter(full), new PrintWriter(err), false, 80, false);
        assertEquals(ExitStatus.FAILED, new CommandLineFace(streams).run("runs", "--layout", "paired", "--noise", "1%"));
        assertTrue(err.toString().contains("could not be written in full"), err.toString());
    }
}
