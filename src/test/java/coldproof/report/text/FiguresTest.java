package coldproof.report.text;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FiguresTest {
    @ParameterizedTest
    @CsvSource({"0, 0 min", "0.0167, 1 s", "0.75, 45 s", "1, 1 min", "1.5, 90 s", "1.999, 2 min", "2.4, 2 min", "95, 95 min", "119.6, 2 h 00 min",
        "185, 3 h 05 min", "NaN, -"})
    void timesAreReadAtAGlance(double minutes, String text) {
        assertEquals(text, Figures.minutes(minutes));
    }
}
