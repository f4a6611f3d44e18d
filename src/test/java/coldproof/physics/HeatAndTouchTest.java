package coldproof.physics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.physics.TouchLimit.Material;
import coldproof.quantity.Celsius;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HeatAndTouchTest {
    /** Chart of the United States weather service, whole °F (from memory), and the formula's value computed beforehand. */
    @ParameterizedTest(name = "{0} °F, {1} %: {2}")
    @CsvSource({"90, 50, 94.60, 95", "90, 70, 105.92, 106", "100, 40, 109.26, 109", "100, 55, 123.64, 124", "86, 90, 105.39, 105"})
    void heatIndexIsThatOfTheChart(double air, double humidity, double formula, double printed) {
        assertEquals(formula, HeatIndex.inFahrenheit(air, humidity), 0.005);
        assertEquals(printed, HeatIndex.inFahrenheit(air, humidity), 0.5);
        double metric = HeatIndex.of(Celsius.ofFahrenheit(air), new RelativeHumidity(humidity)).degrees();
        assertEquals((formula - 32) / 1.8, metric, 0.003);
    }

    @Test
    void coolDryAirFeelsAboutAsItIs() {
        assertEquals(20, HeatIndex.of(new Celsius(20), new RelativeHumidity(50)).degrees(), 1);
    }

    /** IEC 62368-1 Table 38, TS1: plastic held 1 to 10 s 77 °C (seen); the other cells from memory. */
    @ParameterizedTest(name = "{0} for {1} s: {2} °C")
    @CsvSource({"PLASTIC, 5, 77", "METAL, 5, 60", "GLASS, 5, 71", "METAL, 0.5, 70", "GLASS, 0.5, 85", "PLASTIC, 0.5, 94", "METAL, 30, 51",
        "GLASS, 30, 56",
        "PLASTIC, 30, 60", "METAL, 60, 48", "GLASS, 600, 48", "PLASTIC, 60, 48"})
    void warmestSurfaceByMaterialAndTime(Material material, double seconds, double celsius) {
        assertEquals(celsius, TouchLimit.warmest(material, seconds).degrees());
    }

    /** List of a burns institute, metal/glass/plastic: 49/59/74 more than 5 min ... 68/78/93 1 s. */
    @ParameterizedTest(name = "{0} at {1} °C: {2} s")
    @CsvSource({"METAL, 49, 300", "GLASS, 59, 300", "PLASTIC, 74, 300", "METAL, 52, 90", "GLASS, 65, 30", "PLASTIC, 82, 10", "METAL, 60, 5",
        "GLASS, 76, 1.5", "PLASTIC, 93, 1", "METAL, 90, 1", "METAL, 50, 90"})
    void secondsUntilASurfaceBurns(Material material, double celsius, double seconds) {
        assertEquals(seconds, TouchLimit.secondsToBurn(material, new Celsius(celsius)).orElseThrow());
    }

    @Test
    void aLukewarmSurfaceBurnsNobody() {
        assertTrue(TouchLimit.secondsToBurn(Material.METAL, new Celsius(48.9)).isEmpty());
        assertThrows(IllegalArgumentException.class, () -> TouchLimit.warmest(Material.METAL, 0));
    }
}
