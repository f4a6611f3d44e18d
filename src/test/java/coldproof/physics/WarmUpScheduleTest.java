package coldproof.physics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.quantity.Celsius;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WarmUpScheduleTest {
    /** Four-hour schedule of ACGIH as printed in a site plan; wind in km/h; 0 min means stop, -1 ordinary breaks. */
    @ParameterizedTest(name = "{0} °C, {1} km/h: {2} min")
    @CsvSource({"-26, 0, -1, 1", "-31, 0, -1, 1", "-32, 0, 75, 2", "-34, 0, 75, 2", "-35, 0, 55, 3", "-37, 0, 55, 3", "-38, 0, 40, 4",
        "-39, 0, 40, 4",
        "-40, 0, 30, 5", "-42, 0, 30, 5", "-43, 0, 0, 0", "-29, 8, 75, 2", "-31, 8, 75, 2", "-26, 16, 75, 2", "-28, 16, 75, 2",
        "-28, 24, 55, 3",
        "-26, 32, 40, 4"})
    void theScheduleIsThePublishedOne(double air, double wind, double stay, int breaks) {
        WarmUpSchedule schedule = WarmUpSchedule.of(new Celsius(air), wind / 3.6, false);
        assertEquals(stay < 0 ? Double.POSITIVE_INFINITY : stay, schedule.longestStayMinutes());
        assertEquals(breaks, schedule.warmBreaks());
        assertEquals(stay == 0, schedule.saysStop());
    }

    /** "Apply the schedule one step lower for light work": -35 °C counts as the row below. */
    @Test
    void standingAtABenchCountsAsOneStepColder() {
        assertEquals(40, WarmUpSchedule.of(new Celsius(-35), 0, true).longestStayMinutes());
        assertTrue(WarmUpSchedule.of(new Celsius(-40), 0, true).saysStop());
    }

    @Test
    void warmerThanTheTableThereIsNoLimitFromIt() {
        assertEquals(Double.POSITIVE_INFINITY, WarmUpSchedule.of(new Celsius(-25), 20, true).longestStayMinutes());
    }
}
