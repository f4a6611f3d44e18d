package coldproof.report.html;

import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.report.plot.Colour;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class AppearanceTest {
    private static final double READABLE = 4.5; // WCAG 2.2, success criterion 1.4.3 (AA), for letters of any size

    /** Every colour of letters on every ground they stand on; the answer and the text meet 7, criterion 1.4.6 (AAA). */
    @Test
    void lettersStandOutFromTheirGround() {
        for (Map<String, Integer> colours : List.of(Appearance.LIGHT, Appearance.DARK)) {
            for (String ground : List.of("paper", "panel")) {
                assertTrue(contrast(colours, "ink", ground) >= 7, "ink on " + ground);
                for (String letters : List.of("soft", "accent", "alarm")) {
                    assertTrue(contrast(colours, letters, ground) >= READABLE, letters + " on " + ground + ": " + contrast(colours, letters, ground));
                }
            }
            assertTrue(contrast(colours, "ink", "alarmpaper") >= 7, "ink on alarmpaper");
            assertTrue(contrast(colours, "alarm", "alarmpaper") >= READABLE, "alarm on alarmpaper");
        }
    }

    private static double contrast(Map<String, Integer> colours, String letters, String ground) {
        return Colour.contrast(colours.get(letters), colours.get(ground));
    }

    @Test
    void nothingIsFetched() {
        String rules = Appearance.rules();
        assertTrue(!rules.contains("url(") && !rules.contains("@import") && !rules.contains("//"));
    }
}
