package coldproof.physics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SunTest {
    private static final double NEAR_GRAZING = 300; // s: where the sun only grazes the height, a minute of arc is minutes of time

    private static void near(String cell, Optional<Instant> found, double toleranceSeconds, String what) {
        assertEquals(cell.isEmpty(), found.isEmpty(), what + ": " + cell + " against " + found);
        if (!cell.isEmpty()) {
            double seconds = Duration.between(Instant.parse(cell), found.orElseThrow()).toMillis() / 1000.0;
            assertEquals(0, seconds, toleranceSeconds, what);
        }
    }

    /** Numerical ephemeris; script and version in the header of the table. */
    @Test
    void timesAgreeWithANumericalEphemeris() {
        List<String[]> rows = Tables.rows("sun-times.csv");
        for (String[] row : rows.subList(1, rows.size())) {
            Site site = new Site(Double.parseDouble(row[1]), Double.parseDouble(row[2]));
            Sun.Day day = Sun.day(LocalDate.parse(row[0]), site);
            String where = String.join(",", row[0], row[1], row[2]);
            double tolerance = Math.abs(site.latitudeDegrees()) >= 65 ? NEAR_GRAZING : 30; // low-precision formulas: 0.01° of height
            near(row[3], day.dawn(), tolerance, "dawn " + where);
            near(row[4], day.sunrise(), tolerance, "sunrise " + where);
            near(row[5], Optional.of(day.noon()), 5, "noon " + where);
            near(row[6], day.sunset(), tolerance, "sunset " + where);
            near(row[7], day.dusk(), tolerance, "dusk " + where);
        }
    }

    @Test
    void positionsAgreeWithANumericalEphemeris() {
        List<String[]> rows = Tables.rows("sun-positions.csv");
        for (String[] row : rows.subList(1, rows.size())) {
            Site site = new Site(Double.parseDouble(row[1]), Double.parseDouble(row[2]));
            Sun.Position position = Sun.position(Instant.parse(row[0]), site);
            double stated = 0.02; // formulas 0.01°, parallax left out 0.002°
            assertEquals(Double.parseDouble(row[3]), position.elevationDegrees(), stated, String.join(",", row));
            double turn = Math.IEEEremainder(Double.parseDouble(row[4]) - position.azimuthDegrees(), 360);
            assertEquals(0, turn * Math.cos(Math.toRadians(position.elevationDegrees())), stated, String.join(",", row));
        }
    }

    /** Printed almanac times in UTC, whole minutes, from memory: London 51.5 N, 0.13 W; New York 40.7 N, 74.0 W; the solstices. */
    @ParameterizedTest(name = "{0} at {1}, {2}")
    @CsvSource({"2023-06-21, 51.5, -0.13, 2023-06-21T03:43:00Z, 2023-06-21T20:21:00Z",
        "2023-12-21, 51.5, -0.13, 2023-12-21T08:04:00Z, 2023-12-21T15:53:00Z",
        "2023-06-21, 40.71, -74.01, 2023-06-21T09:25:00Z, 2023-06-22T00:31:00Z",
        "2023-12-21, 40.71, -74.01, 2023-12-21T12:17:00Z, 2023-12-21T21:32:00Z"})
    void almanacTimes(LocalDate date, double latitude, double longitude, Instant sunrise, Instant sunset) {
        Sun.Day day = Sun.day(date, new Site(latitude, longitude));
        assertEquals(0, Duration.between(sunrise, day.sunrise().orElseThrow()).toSeconds(), 90); // whole minutes, and where in the city
        assertEquals(0, Duration.between(sunset, day.sunset().orElseThrow()).toSeconds(), 90);
    }

    @Test
    void lightLeftCountsDownToSunset() {
        Site site = new Site(47, 11);
        Instant sunset = Sun.day(LocalDate.parse("2026-01-14"), site).sunset().orElseThrow();
        assertEquals(3600, Sun.lightLeft(sunset.minusSeconds(3600), site).orElseThrow().toSeconds(), 1);
        assertEquals(Duration.ZERO, Sun.lightLeft(sunset.plusSeconds(120), site).orElseThrow());
        assertEquals(Duration.ZERO, Sun.lightLeft(sunset.plusSeconds(5 * 3600), site).orElseThrow());
    }

    /** Where the evening lies on the next date of universal time. */
    @Test
    void lightLeftKnowsTheDateAtThePlace() {
        Site site = new Site(40.0, -105.3);
        Instant afternoon = Instant.parse("2026-06-21T23:30:00Z");
        Duration left = Sun.lightLeft(afternoon, site).orElseThrow();
        assertTrue(left.toMinutes() > 150 && left.toMinutes() < 200, left.toString()); // sunset 20:32 local, 02:32 UTC, from memory
    }

    @Test
    void polarDayAndNightHaveNoSunset() {
        Site site = new Site(70, 25);
        assertTrue(Sun.lightLeft(Instant.parse("2026-06-21T22:00:00Z"), site).isEmpty());
        assertEquals(Duration.ZERO, Sun.lightLeft(Instant.parse("2026-12-21T10:30:00Z"), site).orElseThrow());
        assertTrue(Sun.day(LocalDate.parse("2026-06-21"), site).noonElevationDegrees() > 40);
        assertTrue(Sun.day(LocalDate.parse("2026-12-21"), site).noonElevationDegrees() < 0);
    }
}
