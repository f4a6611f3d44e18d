package coldproof.face.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

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
}
