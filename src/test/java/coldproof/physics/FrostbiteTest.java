package coldproof.physics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.quantity.Celsius;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FrostbiteTest {
    private static OptionalDouble minutes(double air, double kilometresPerHour) {
        return Frostbite.minutes(new Celsius(air), kilometresPerHour / 3.6);
    }

    /** Hazard bands of Environment Canada as printed by a broadcaster and an almanac. */
    @ParameterizedTest(name = "{0} °C: {1}")
    @CsvSource({"0, LOW", "-9, LOW", "-10, MODERATE", "-27, MODERATE", "-27.4, MODERATE", "-28, RISK", "-39, RISK", "-40, HIGH",
        "-47, HIGH",
        "-48, VERY_HIGH", "-54, VERY_HIGH", "-55, EXTREME", "-70, EXTREME"})
    void bandsBeginWhereTheyArePublished(double windChill, Frostbite.Band band) {
        assertEquals(band, Frostbite.band(new Celsius(windChill)));
    }

    /** Formula from memory, values computed beforehand: 16.9, 8.9, 6.9, 4.6 min; the shorter of band and formula holds. */
    @ParameterizedTest(name = "{0} °C, {1} km/h: {2} min")
    @CsvSource({"-20, 25, 16.9", "-25, 40, 8.9", "-30, 30, 6.9", "-35, 40, 4.6"})
    void theFormulaCountsWhereItIsShorter(double air, double wind, double formula) {
        double minutes = minutes(air, wind).orElseThrow();
        assertTrue(minutes <= formula + 0.05, minutes + " min is longer than the formula's " + formula);
    }

    /** At -40 °C and 50 km/h the formula says 3.1 min but the band (wind chill -63) less than 2. */
    @Test
    void theBandCountsWhereItIsShorter() {
        assertEquals(2, minutes(-40, 50).orElseThrow(), 1e-9);
    }

    @Test
    void theTimeIsNeverLongerThanTheBandPrints() {
        for (double air = -60; air <= 0; air += 0.5) {
            for (double wind = 0; wind <= 150; wind += 1) {
                double felt = WindChill.of(new Celsius(air), wind / 3.6).degrees();
                Frostbite.Band band = Frostbite.band(new Celsius(felt));
                OptionalDouble minutes = minutes(air, wind);
                if (band.longestMinutes().isPresent()) {
                    String where = air + " °C, " + wind + " km/h, W " + felt;
                    assertTrue(minutes.orElseThrow() <= band.longestMinutes().getAsDouble() + 1e-9, where);
                }
            }
        }
    }

    @Test
    void colderOrWindierNeverGivesMoreTime() {
        for (double air = -60; air <= 0; air += 0.5) {
            for (double wind = 0; wind <= 150; wind += 1) {
                double now = minutes(air, wind).orElse(Double.POSITIVE_INFINITY);
                double windier = minutes(air, wind + 1).orElse(Double.POSITIVE_INFINITY);
                double colder = minutes(air - 0.5, wind).orElse(Double.POSITIVE_INFINITY);
                String where = air + " °C, " + wind + " km/h";
                assertTrue(windier <= now + 0.05, where); // the two branches of wind chill differ by 0.01 K at 5 km/h
                assertTrue(colder <= now, where);
            }
        }
    }

    /** United States weather service: no frostbite with air above freezing, whatever the wind chill. */
    @Test
    void airAboveZeroFreezesNobody() {
        assertTrue(minutes(0.1, 150).isEmpty());
    }

    /** The same service gives 30 min from a wind chill of -18 °F (-28 °C). */
    @Test
    void halfAnHourAtTheBeginningOfTheFirstBand() {
        double wind = 20;
        double air = -17.8; // wind chill -28 °C
        assertEquals(-28, WindChill.of(new Celsius(air), wind / 3.6).degrees(), 0.3);
        assertEquals(30, minutes(air, wind).orElseThrow(), 3); // 0.3 K of wind chill here is 1 min, the half degree of rounding 1.3
    }

    @Test
    void mildColdHasNoTime() {
        assertTrue(minutes(-9, 10.8).isEmpty());
    }
}
