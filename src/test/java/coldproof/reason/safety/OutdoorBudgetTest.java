package coldproof.reason.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.reason.safety.OutdoorBudget.Kind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class OutdoorBudgetTest {
    private static SafetyScene air(double air, double kilometresPerHour) {
        return SafetyScene.NOTHING.with(Reading.AIR, air).with(Reading.WIND, kilometresPerHour / 3.6);
    }

    private static OutdoorBudget.Limit binding(SafetyScene scene) {
        return OutdoorBudget.of(scene).binding().orElseThrow();
    }

    /** ACGIH schedule one step lower for light work: -29 to -31 °C calm is then 75 min, -32 to -34 55 min; frostbite is later in calm air. */
    @ParameterizedTest(name = "{0} °C, {1} km/h: {2} min by {3}")
    @CsvSource({"-12, 0, 240, COLD", "-20, 0, 240, COLD", "-25, 15, 18, FROSTBITE", "-40, 50, 0, COLD"})
    void theShorterOfScheduleAndFrostbiteBinds(double air, double wind, double minutes, Kind kind) {
        OutdoorBudget.Limit limit = binding(air(air, wind));
        assertEquals(kind, limit.kind());
        assertEquals(minutes, limit.seconds() / 60, 6); // the frostbite time between the published 10 and 30 min is interpolated
    }

    @Test
    void mildAirSetsNoLimit() {
        assertTrue(OutdoorBudget.of(air(-5, 0)).limits().isEmpty());
        assertTrue(OutdoorBudget.of(air(15, 20)).limits().isEmpty());
    }

    @Test
    void halfAnHourBeforeSunsetIsTheEnd() {
        OutdoorBudget.Limit limit = binding(air(-5, 0).with(Reading.DAYLIGHT, 5400));
        assertEquals(Kind.DAYLIGHT, limit.kind());
        assertEquals(3600, limit.seconds());
        assertEquals(0, binding(air(-5, 0).with(Reading.DAYLIGHT, 0)).seconds());
    }

    /** By hand: 60 Wh (1 - 0.3) (0.5 + 0.5 * 8 / 45) 0.8 = 19.79 Wh; at 30 W 39.6 min. Cells at -10 °C. */
    @Test
    void theBatteryInTheColdEndsTheStay() {
        SafetyScene scene = air(-10, 0).with(Reading.BATTERY_ENERGY, 60).with(Reading.DRAW, 30).with(Reading.BATTERY, 100);
        OutdoorBudget.Limit limit = binding(scene);
        assertEquals(Kind.BATTERY, limit.kind());
        assertEquals(39.6, limit.seconds() / 60, 0.05);
        assertEquals(Kind.COLD, binding(scene.with(Reading.POWER, "wall")).kind(), "on the wall the battery does not end it");
        assertEquals(0, binding(scene.with(Reading.BATTERY, 30)).seconds(), "at 30 % nothing is left");
    }

    @Test
    void underARoofOnlyTheBatteryCounts() {
        SafetyScene chamber = air(-30, 10).with(Reading.OUTDOORS, "no").with(Reading.DAYLIGHT, 0);
        assertTrue(OutdoorBudget.of(chamber).limits().isEmpty());
        assertEquals(Kind.BATTERY, binding(chamber.with(Reading.BATTERY_ENERGY, 60).with(Reading.DRAW, 30)).kind());
    }

    @Test
    void colderOrWindierNeverAllowsMore() {
        for (double air = -45; air <= 5; air += 0.5) {
            for (double wind = 0; wind <= 60; wind += 2) {
                double now = OutdoorBudget.of(air(air, wind)).binding().map(OutdoorBudget.Limit::seconds).orElse(Double.POSITIVE_INFINITY);
                double windier = OutdoorBudget.of(air(air, wind + 2)).binding().map(OutdoorBudget.Limit::seconds).orElse(Double.POSITIVE_INFINITY);
                double colder = OutdoorBudget.of(air(air - 0.5, wind)).binding().map(OutdoorBudget.Limit::seconds).orElse(Double.POSITIVE_INFINITY);
                String where = air + " °C, " + wind + " km/h";
                assertTrue(windier <= now + 3, where); // the branches of wind chill differ by 0.01 K at 5 km/h
                assertTrue(colder <= now, where);
            }
        }
    }

    @Test
    void aStayOfExactlyTheLongestTimeFitsAndOneSecondMoreDoesNot() {
        OutdoorBudget hour = OutdoorBudget.of(air(-5, 0).with(Reading.DAYLIGHT, 5400));
        assertTrue(new OutdoorStay(1, "yard", 3600, 5, 600, hour).fits());
        OutdoorStay tooLong = new OutdoorStay(1, "yard", 3601, 5, 600, hour);
        assertTrue(!tooLong.fits());
        assertEquals(4, tooLong.trialsThatFit()); // opening 601 s, so four trials of 600 s end at 3001 s, five at 3601 s
        assertEquals(0, new OutdoorStay(1, "yard", 9000, 1, 600, hour).trialsThatFit());
    }
}
