package coldproof.physics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.quantity.Celsius;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AirDensityTest {
    /** Standard atmosphere (ISO 2533), density to four decimals. */
    @ParameterizedTest(name = "{0} m: {1} kg/m³")
    @CsvSource({"0, 1.2250", "500, 1.1673", "1000, 1.1116", "2000, 1.0065", "3000, 0.9091"})
    void standardDensity(double metres, double density) {
        assertEquals(density, AirDensity.standard(metres), 0.00005);
    }

    /** 95461 Pa at 500 m in the test suite of a public psychrometric library. */
    @Test
    void standardPressureAtFiveHundredMetres() {
        assertEquals(95_461, AirDensity.standardPressure(500), 1);
    }

    /** ASHRAE Fundamentals 2017 ch. 1 Table 2: dry air at 25 °C fills 0.8443 m³/kg (tolerance stated there 0.1 %). */
    @Test
    void dryAirFillsWhatTheHandbookSays() {
        assertEquals(0.8443, 1 / AirDensity.dry(new Celsius(25), 101_325), 0.00085);
    }

    /** CIPM-2007 (non-ideal) 1.1993 and 1.3156; the ideal mixture 1.1989, 1.3147, 1.1359, computed beforehand. */
    @ParameterizedTest(name = "{0} °C, {1} %: {2} kg/m³")
    @CsvSource({"20, 50, 1.1989, 1.1993", "-5, 80, 1.3147, 1.3156", "35, 40, 1.1359, "})
    void moistAir(double air, double humidity, double ideal, Double cipm) {
        double density = AirDensity.moist(new Celsius(air), new RelativeHumidity(humidity), 101_325);
        assertEquals(ideal, density, 0.0001);
        if (cipm != null) {
            assertEquals(cipm, density, 0.001 * cipm);
        }
    }

    @Test
    void moistAirIsLighterThanDry() {
        assertTrue(AirDensity.moist(new Celsius(30), new RelativeHumidity(100), 101_325) < AirDensity.dry(new Celsius(30), 101_325));
    }

    /** From 20 to -5 °C density rises by 9.7 % (mixture), so convection improves by 4.5 to 7 %; at 2000 m it worsens by 10 to 17 %. */
    @Test
    void coldDenseAirCoolsBetterAndThinAirWorse() {
        double room = AirDensity.moist(new Celsius(20), new RelativeHumidity(50), 101_325);
        double cold = AirDensity.moist(new Celsius(-5), new RelativeHumidity(80), 101_325);
        assertEquals(0.097, cold / room - 1, 0.0005);
        AirDensity.ResistanceFactor better = AirDensity.convectiveResistance(room, cold);
        assertEquals(-7.1, 100 * (better.best() - 1), 0.1);
        assertEquals(-4.5, 100 * (better.least() - 1), 0.1);
        AirDensity.ResistanceFactor worse = AirDensity.convectiveResistance(AirDensity.standard(0), AirDensity.standard(2000));
        assertEquals(17, 100 * (worse.best() - 1), 0.5);
        assertEquals(10, 100 * (worse.least() - 1), 0.5);
    }

    @Test
    void altitudeOutsideTheRangeIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> AirDensity.standard(9001));
        assertThrows(IllegalArgumentException.class, () -> AirDensity.standard(Double.NaN));
    }
}
