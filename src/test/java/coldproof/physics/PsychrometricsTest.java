package coldproof.physics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.quantity.Celsius;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PsychrometricsTest {
    private static Celsius c(double degrees) {
        return new Celsius(degrees);
    }

    private static double dew(double air, double humidity) {
        return Psychrometrics.dewPoint(c(air), new RelativeHumidity(humidity)).orElseThrow().degrees();
    }

    private static double frost(double air, double humidity) {
        return Psychrometrics.frostPoint(c(air), new RelativeHumidity(humidity)).orElseThrow().degrees();
    }

    /**
     * Verification values of IAPWS R14-08 (230 K), SR1-86 (triple point, normal boiling point), IF97 (300 K, another formulation), from
     * memory.
     */
    @Test
    void theOracleReproducesItsOwnVerificationPoints() {
        assertEquals(8.94735, Iapws.overIce(230 - 273.15), 0.000005);
        assertEquals(611.657, Iapws.overWater(0.01), 0.0005);
        assertEquals(101_325, Iapws.overWater(373.1243 - 273.15), 5); // the temperature is printed to 0.1 mK: 0.4 Pa; formulation 0.003 %
        assertEquals(3536.59, Iapws.overWater(300 - 273.15), 5e-5 * 3536.59); // the two formulations differ by 36 ppm here
    }

    /**
     * ASHRAE Fundamentals 2017 ch. 1 Table 3, as asserted in the test suite of a public psychrometric library (300 ppm); Magnus needs 0.4
     * %.
     */
    @ParameterizedTest(name = "over water at {0} °C")
    @CsvSource({"5, 872.6", "25, 3169.7", "50, 12351.3"})
    void saturationOverWaterIsThatOfTheHandbook(double celsius, double pascal) {
        assertEquals(pascal, Psychrometrics.saturationPressureOverWater(c(celsius)), 0.004 * pascal);
        assertEquals(pascal, Iapws.overWater(celsius), 3e-4 * pascal);
    }

    /** Same table, whose rows below zero are over ice; Magnus is within 0.03 %. */
    @ParameterizedTest(name = "over ice at {0} °C")
    @CsvSource({"-20, 103.24", "-5, 401.74"})
    void saturationOverIceIsThatOfTheHandbook(double celsius, double pascal) {
        assertEquals(pascal, Psychrometrics.saturationPressureOverIce(c(celsius)), 3e-4 * pascal);
    }

    /** WMO-No. 8: the formula gives 611.2 Pa at 0 °C by construction. */
    @Test
    void bothFormulasMeetAtZero() {
        assertEquals(611.2, Psychrometrics.saturationPressureOverWater(c(0)), 1e-12);
        assertEquals(611.2, Psychrometrics.saturationPressureOverIce(c(0)), 1e-12);
    }

    /** Deviations of Magnus from IAPWS as computed beforehand from the published formulas, percent to two digits. */
    @ParameterizedTest(name = "{0} °C: {1} %")
    @CsvSource({"-40, 0.58", "-20, 0.37", "0, 0.00", "20, -0.28", "30, -0.31", "50, -0.06"})
    void magnusDeviatesFromTheReferenceByAsMuchAsIsKnown(double celsius, double percent) {
        double deviation = 100 * (Psychrometrics.saturationPressureOverWater(c(celsius)) / Iapws.overWater(celsius) - 1);
        assertEquals(percent, deviation, 0.0051); // half of the last printed digit
    }

    @Test
    void dewPointStaysWithinATenthOfAKelvinOfTheOracleOverTheWholeRange() {
        double worst = 0;
        for (double air = -45; air <= 60; air += 0.5) {
            for (int humidity = 1; humidity <= 100; humidity++) {
                Optional<Celsius> dew = Psychrometrics.dewPoint(c(air), new RelativeHumidity(humidity));
                double oracle = Iapws.dewPoint(humidity / 100.0 * Iapws.overWater(air));
                if (dew.isEmpty()) {
                    assertTrue(oracle < -44.9, "no dew point at " + air + " °C, " + humidity + " % but the oracle has " + oracle);
                } else {
                    worst = Math.max(worst, Math.abs(dew.get().degrees() - oracle));
                }
            }
        }
        assertTrue(worst <= 0.10, "largest difference " + worst + " K");
    }

    @Test
    void frostPointStaysWithinATenthOfAKelvinOfTheOracleOverTheWholeRange() {
        double worst = 0;
        for (double air = -45; air <= 60; air += 0.5) {
            for (int humidity = 1; humidity <= 100; humidity++) {
                Optional<Celsius> frost = Psychrometrics.frostPoint(c(air), new RelativeHumidity(humidity));
                double pascal = humidity / 100.0 * Iapws.overWater(air);
                if (frost.isPresent() && pascal < 611.657) {
                    worst = Math.max(worst, Math.abs(frost.get().degrees() - Iapws.frostPoint(pascal)));
                }
            }
        }
        assertTrue(worst <= 0.10, "largest difference " + worst + " K");
    }

    /** Chart "Taupunkttabelle"; it carries slips and rounding of its own up to 0.15 K. */
    @Test
    void dewPointsAreThoseOfTheBuildingTable() {
        List<String[]> rows = Tables.rows("dew-point-chart.csv");
        int cells = 0;
        for (String[] row : rows.subList(1, rows.size())) {
            for (int i = 1; i < row.length; i++) {
                if (!row[i].isEmpty()) {
                    double air = Double.parseDouble(row[0]);
                    double humidity = Double.parseDouble(rows.get(0)[i]);
                    assertEquals(Double.parseDouble(row[i]), dew(air, humidity), 0.15, air + " °C, " + humidity + " %");
                    cells++;
                }
            }
        }
        assertEquals(46, cells);
    }

    /** Single published points: maleco.de, trocknungberlin.de, elsner-elektronik.de, doerken.de (printed to 0.1 or 1 °C). */
    @ParameterizedTest(name = "{0} °C, {1} %: {2} °C")
    @CsvSource({"20, 70, 14.4, 0.1", "10, 90, 8.4, 0.1", "22, 45, 9.5, 0.1", "22, 70, 16.3, 0.1", "24, 60, 15.8, 0.1", "30, 55, 20, 0.5"})
    void dewPointsSeenElsewhereAgree(double air, double humidity, double published, double rounding) {
        assertEquals(published, dew(air, humidity), rounding);
    }

    /** The chart's cells below zero are frost points: 10 °C at 40, 35 and 30 %. */
    @ParameterizedTest(name = "10 °C, {0} %: frost point {1} °C")
    @CsvSource({"40, -2.6", "35, -4.2", "30, -6.0"})
    void frostPointsAreWhatTheChartPrintsBelowZero(double humidity, double printed) {
        assertEquals(printed, frost(10, humidity), 0.1); // half a digit and its rounding slip
    }

    /** Computed beforehand with the WMO pair, two decimals. */
    @ParameterizedTest(name = "{0} °C, {1} %: dew {2}, frost {3}")
    @CsvSource({"-5, 80, -7.92, -7.01", "-10, 80, -12.80, -11.39", "-5, 60, -11.57, -10.29", "0, 90, -1.45, -1.27"})
    void belowZeroTheFrostPointLiesAboveTheDewPoint(double air, double humidity, double dew, double frost) {
        assertEquals(dew, dew(air, humidity), 0.005);
        assertEquals(frost, frost(air, humidity), 0.005);
    }

    /** -5 °C, 80 % brought to 21 °C has 13.6 % (computed beforehand). */
    @Test
    void coldAirIsDryOnceWarmed() {
        assertEquals(13.6, Psychrometrics.relativeHumidityAt(c(21), c(-5), new RelativeHumidity(80)), 0.05);
    }

    @Test
    void saturatedAirHasItsOwnTemperatureAsDewPoint() {
        for (double air = -45; air <= 60; air += 0.25) {
            assertEquals(air, dew(air, 100), 1e-9);
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {-90, -45.01, 60.01, 68, 100})
    void airOutsideTheRangeIsRefusedWithTheRange(double air) {
        IllegalArgumentException refused = assertThrows(IllegalArgumentException.class, () -> dew(air, 50));
        assertTrue(refused.getMessage().contains("[-45.0, 60.0] °C"), refused.getMessage());
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 0.99, 100.01, 130, -5, Double.NaN, Double.POSITIVE_INFINITY})
    void humidityOutsideTheRangeIsRefused(double humidity) {
        assertThrows(IllegalArgumentException.class, () -> new RelativeHumidity(humidity));
    }

    @Test
    void aDewPointTooColdForTheFormulaDoesNotExist() {
        assertTrue(Psychrometrics.dewPoint(c(-40), new RelativeHumidity(20)).isEmpty());
        assertTrue(Psychrometrics.frostPoint(c(-40), new RelativeHumidity(20)).isPresent());
    }

    @Test
    void warmMoistAirHasNoFrostPoint() {
        assertTrue(Psychrometrics.frostPoint(c(20), new RelativeHumidity(50)).isEmpty());
    }
}
