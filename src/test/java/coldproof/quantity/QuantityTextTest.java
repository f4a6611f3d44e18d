package coldproof.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.quantity.QuantityText.Bare;
import java.util.List;
import java.util.OptionalInt;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class QuantityTextTest {
    /** Unit definitions: SI brochure, 9th ed. (2019); mile 1609.344 m and knot 1852 m/h by definition; °F = 1.8 °C + 32. */
    @ParameterizedTest(name = "{0} is {2} {1}")
    @CsvSource(delimiter = '|', value = {
        "3 %|PERCENT|3", "3,5%|PERCENT|3.5", "-2 %|PERCENT|-2", "21 °C|TEMPERATURE|21", "-9C|TEMPERATURE|-9", "−9 °C|TEMPERATURE|-9",
        "15 °F|TEMPERATURE|-9.444444444444445", "264 K|TEMPERATURE|-9.149999999999977", "4 min|TIME|240", "1 h 30 min|TIME|5400",
        "3h|TIME|10800", "90 s|TIME|90", "3 m/s|SPEED|3", "36 km/h|SPEED|10", "10 mph|SPEED|4.4704", "38W|POWER|38", "38000 mW|POWER|38",
        "4.1 GHz|CLOCK|4100", "4100MHz|CLOCK|4100", "60 Wh|ENERGY|60", "3 K|TEMPERATURE_DIFFERENCE|3", "450 m|LENGTH|450",
    })
    void readsWhatPeopleWrite(String text, Dimension dimension, double expected) {
        assertEquals(expected, QuantityText.read(text, dimension, Bare.REFUSED), 1e-12 * Math.max(1, Math.abs(expected)));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "abc", "1,500.0 %", "3 % 4 %", "NaN %", "1e999 %", "--3 %", "3 apples", "Infinity %", "3"})
    void refusesWhatIsNoPercentage(String text) {
        assertThrows(QuantityText.Unreadable.class, () -> QuantityText.read(text, Dimension.PERCENT, Bare.REFUSED));
    }

    @Test
    void refusesATemperatureBelowAbsoluteZero() {
        assertThrows(QuantityText.Unreadable.class, () -> QuantityText.read("-300 °C", Dimension.TEMPERATURE, Bare.REFUSED));
    }

    @Test
    void takesABareNumberOnlyWhereAllowed() {
        assertEquals(3, QuantityText.read("3", Dimension.PERCENT, Bare.ALLOWED));
    }

    @Test
    void powerAndClockUnitsKeepTheirCase() {
        assertEquals(0.005, QuantityText.read("5 mW", Dimension.POWER, Bare.REFUSED), 1e-15);
        assertThrows(QuantityText.Unreadable.class, () -> QuantityText.read("5 mw", Dimension.POWER, Bare.REFUSED));
    }

    @Test
    void nearestWordsComeByEditDistance() {
        assertEquals(List.of("ambient"), NearestWord.of("ambeint", List.of("ambient", "fan")));
        assertEquals(List.of(), NearestWord.of("zzz", List.of("ambient", "fan")));
    }

    @Test
    void percentAndLogComeBackToTheStart() {
        for (double percent : new double[] {-50, -3, 0, 1e-9, 3, 250}) {
            assertEquals(percent, LogRatio.ofPercent(percent).percent(), 1e-12 * Math.max(1, Math.abs(percent)));
        }
    }

    /** The grammar of a number, once more as a pattern: the hand-written reader must agree with it on any text of these characters. */
    @Test
    void takesForANumberWhatThePatternDoes() {
        Random random = new Random(20260114);
        String alphabet = "0123456789.,+-eE x";
        int numbers = 0;
        for (int i = 0; i < 200_000; i++) {
            StringBuilder text = new StringBuilder();
            for (int length = random.nextInt(7); length >= 0; length--) {
                text.append(alphabet.charAt(random.nextInt(alphabet.length())));
            }
            String clean = text.toString().strip();
            boolean expected = clean.matches("[+-]?(\\d+([.,]\\d*)?|[.,]\\d+)([eE][+-]?\\d+)?") && Double.isFinite(Double.parseDouble(clean.replace(',', '.')));
            assertEquals(expected, isNumber(text.toString()), text::toString);
            numbers += expected ? 1 : 0;
        }
        assertTrue(numbers > 5000, "too few of the texts were numbers to prove anything: " + numbers);
    }

    private static boolean isNumber(String text) {
        try {
            QuantityText.number(text);
            return true;
        } catch (QuantityText.Unreadable unreadable) {
            return false;
        }
    }

    @Test
    void readsAWholeNumberInsideItsRangeOnly() {
        assertEquals(OptionalInt.of(80), QuantityText.whole("80", 40, 200));
        for (String text : List.of("", "39", "201", "-80", "+80", "8e1", "80.0", "8 0", "1234567890", "８０")) {
            assertEquals(OptionalInt.empty(), QuantityText.whole(text, 40, 200), text);
        }
    }
}
