package coldproof.physics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.quantity.Celsius;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class LumpedBodyTest {
    private static Celsius c(double degrees) {
        return new Celsius(degrees);
    }

    /** 2.0 kg, 900 J/(kg K), 0.17 m², 10 W/(m² K): 1059 s; worked beforehand from the textbook formula. */
    @Test
    void timeConstantOfALaptopInStillAir() {
        assertEquals(1059, LumpedBody.timeConstantSeconds(2.0 * 900, 10, 0.17), 0.5);
    }

    /** From -5 °C in a room of 21 °C to 13.18 °C (dew point 10.18 °C plus 3 K) takes ln(26 / 7.82) = 1.201 time constants. */
    @Test
    void theWayToTheDewPointPlusThreeKelvins() {
        double dew = Psychrometrics.dewPoint(c(21), new RelativeHumidity(50)).orElseThrow().degrees();
        assertEquals(10.18, dew, 0.01);
        assertEquals(1.201, LumpedBody.secondsToReach(c(13.18), c(-5), c(21), 1).orElseThrow(), 0.0005);
    }

    /** 18 min bare, 35 on a table, 44 in a bag, worked beforehand; the waits of this way are 42 min on the table and 53 in the bag. */
    @Test
    void aLaptopTakesTheTimesWorkedBeforehand() {
        TimeConstant tau = DeviceClass.LAPTOP.timeConstant();
        assertEquals(35, tau.lowSeconds() / 60, 0.5);
        assertEquals(44, tau.likelySeconds() / 60, 0.5);
        assertEquals(88, tau.highSeconds() / 60, 1);
        RewarmTime wait = LumpedBody.rewarm(c(13.18), c(-5), c(21), tau).orElseThrow();
        assertEquals(42, wait.lowMinutes(), 0.5);
        assertEquals(60, wait.likelyMinutes(), 0); // 53 min by the formula; never less than an hour unless measured
        assertEquals(106, wait.highMinutes(), 0.5);
    }

    @Test
    void aMeasuredTimeConstantHasNoFloor() {
        RewarmTime wait = LumpedBody.rewarm(c(13.18), c(-5), c(21), new TimeConstant(900, 1000, 1100, true)).orElseThrow();
        assertEquals(1.201 * 1000 / 60, wait.likelyMinutes(), 0.01);
    }

    @Test
    void aRoomTooHumidNeverGetsItThere() {
        assertTrue(LumpedBody.rewarm(c(21), c(-5), c(21), DeviceClass.LAPTOP.timeConstant()).isEmpty());
        assertTrue(LumpedBody.rewarm(c(22), c(25), c(21), DeviceClass.LAPTOP.timeConstant()).isEmpty());
    }

    @Test
    void aWarmDeviceNeedsNoWait() {
        assertEquals(RewarmTime.NONE, LumpedBody.rewarm(c(12), c(15), c(21), DeviceClass.LAPTOP.timeConstant()).orElseThrow());
    }

    @Test
    void coolingGoesTheOtherWay() {
        assertEquals(1000 * Math.log(2), LumpedBody.secondsToReach(c(5), c(20), c(-10), 1000).orElseThrow(), 1e-9);
        assertTrue(LumpedBody.secondsToReach(c(-11), c(20), c(-10), 1000).isEmpty());
        assertEquals(0, LumpedBody.secondsToReach(c(25), c(20), c(-10), 1000).orElseThrow());
    }

    @ParameterizedTest
    @EnumSource(DeviceClass.class)
    void theTimeToATargetLeadsToTheTarget(DeviceClass kind) {
        double tau = kind.timeConstant().likelySeconds();
        double seconds = LumpedBody.secondsToReach(c(13), c(-9), c(21), tau).orElseThrow();
        assertEquals(13, LumpedBody.temperature(c(-9), c(21), seconds, tau).degrees(), 1e-9);
    }

    @Test
    void nonsenseIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> new TimeConstant(100, 90, 110, false));
        assertThrows(IllegalArgumentException.class, () -> new TimeConstant(Double.NaN, 90, 110, false));
        assertThrows(IllegalArgumentException.class, () -> LumpedBody.temperature(c(0), c(1), -1, 100));
    }
}
