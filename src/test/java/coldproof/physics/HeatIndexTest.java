package coldproof.physics;

import static org.junit.jupiter.api.Assertions.assertEquals;

import coldproof.quantity.Celsius;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HeatIndexTest {
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
}
