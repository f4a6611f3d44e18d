package coldproof.physics;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Optional;

/**
 * Position of the sun and times of sunrise, sunset and civil twilight by the low-precision formulas of J. Meeus, Astronomical algorithms
 * (2nd ed. 1998, ch. 25 and 28, from memory), as in the solar calculator of the United States oceanic and atmospheric administration.
 *
 * <p>For the years 1950 to 2100 the times agree with a numerical ephemeris to 30 s up to 65° of latitude (see SunTest); weather moves the
 * true moment by a minute or more through refraction. A flat horizon is assumed: a hill to the west ends the day earlier.
 */
public final class Sun {
    /** Height of the sun's centre at sunrise and sunset: 34' of refraction and 16' of radius below the horizon, °. */
    public static final double RISE_AND_SET = -0.833;
    /** Height of the sun's centre at the ends of civil twilight, °. */
    public static final double CIVIL_TWILIGHT = -6;

    private static final double EPOCH_2000 = 2_451_545.0; // Julian date
    private static final double EPOCH_1970 = 2_440_587.5; // Julian date
    private static final double SECONDS_A_DAY = 86_400;
    private static final int MOST_ROUNDS = 8;

    /**
     * Where the sun stands.
     *
     * @param elevationDegrees height of its centre above the horizon without refraction
     * @param azimuthDegrees from north over east, in [0, 360)
     */
    public record Position(double elevationDegrees, double azimuthDegrees) {}

    /**
     * The times of one day; empty where the sun does not pass that height on that day.
     *
     * @param dawn beginning of civil twilight
     * @param sunrise upper edge of the sun at the horizon
     * @param noon highest sun
     * @param sunset upper edge of the sun at the horizon
     * @param dusk end of civil twilight
     * @param noonElevationDegrees height of the sun's centre at noon; tells a polar day from a polar night
     */
    public record Day(Optional<Instant> dawn, Optional<Instant> sunrise, Instant noon, Optional<Instant> sunset, Optional<Instant> dusk,
            double noonElevationDegrees) {}

    private Sun() {}

    /** Where the sun stands at a moment. */
    public static Position position(Instant moment, Site site) {
        Orbit orbit = Orbit.at(moment);
        double hour = hourAngle(moment, site, orbit);
        double latitude = Math.toRadians(site.latitudeDegrees());
        double sine = Math.sin(latitude) * Math.sin(orbit.declination) + Math.cos(latitude) * Math.cos(orbit.declination) * Math.cos(hour);
        double elevation = Math.asin(Math.max(-1, Math.min(1, sine)));
        double azimuth = Math.atan2(Math.sin(hour),
                Math.cos(hour) * Math.sin(latitude) - Math.tan(orbit.declination) * Math.cos(latitude)) + Math.PI;
        return new Position(Math.toDegrees(elevation), floorMod(Math.toDegrees(azimuth), 360));
    }

    /**
     * The sun's times on a day.
     *
     * @param date the date at the place by its own mean solar time; ordinary clock dates agree except near midnight
     */
    public static Day day(LocalDate date, Site site) {
        Instant noon = noon(date, site);
        return new Day(passes(noon, site, CIVIL_TWILIGHT, -1), passes(noon, site, RISE_AND_SET, -1), noon,
                passes(noon, site, RISE_AND_SET, 1), passes(noon, site, CIVIL_TWILIGHT, 1), position(noon, site).elevationDegrees());
    }

    /**
     * How long the sun stays up from a moment on: zero when it is down, empty when it does not set within the day (polar day).
     */
    public static Optional<Duration> lightLeft(Instant moment, Site site) {
        if (position(moment, site).elevationDegrees() < RISE_AND_SET) {
            return Optional.of(Duration.ZERO);
        }
        Instant solar = moment.plusMillis(Math.round(site.longitudeDegrees() / 360 * SECONDS_A_DAY * 1000));
        LocalDate solarDate = solar.atZone(ZoneOffset.UTC).toLocalDate();
        for (int later = 0; later <= 1; later++) {
            Optional<Instant> sunset = day(solarDate.plusDays(later), site).sunset();
            if (sunset.isPresent() && !sunset.get().isBefore(moment)) {
                return Optional.of(Duration.between(moment, sunset.get()));
            }
        }
        return Optional.empty();
    }

    private static Instant noon(LocalDate date, Site site) {
        Instant noon = date.atTime(12, 0).toInstant(ZoneOffset.UTC).minusMillis(Math.round(site.longitudeDegrees() * 240_000));
        for (int i = 0; i < 3; i++) {
            noon = noon.minusMillis(Math.round(hourAngle(noon, site, Orbit.at(noon)) / (2 * Math.PI) * SECONDS_A_DAY * 1000));
        }
        return noon;
    }

    /** The moment before (-1) or after (1) noon at which the sun's centre passes a height. */
    private static Optional<Instant> passes(Instant noon, Site site, double elevationDegrees, int side) {
        double latitude = Math.toRadians(site.latitudeDegrees());
        Instant moment = noon;
        for (int i = 0; i < MOST_ROUNDS; i++) {
            Orbit orbit = Orbit.at(moment);
            double cosine = (Math.sin(Math.toRadians(elevationDegrees)) - Math.sin(latitude) * Math.sin(orbit.declination))
                    / (Math.cos(latitude) * Math.cos(orbit.declination));
            if (!(cosine >= -1 && cosine <= 1)) {
                return Optional.empty();
            }
            double wanted = side * Math.acos(cosine);
            double away = wanted - hourAngle(moment, site, orbit);
            if (i == 0) {
                away = floorMod(away * side, 2 * Math.PI) * side; // from noon always towards the wanted side
            } else {
                away = Math.IEEEremainder(away, 2 * Math.PI);
            }
            moment = moment.plusMillis(Math.round(away / (2 * Math.PI) * SECONDS_A_DAY * 1000));
        }
        return Optional.of(moment);
    }

    /** Hour angle of the sun in radians, in (-pi, pi]; 0 at its highest. */
    private static double hourAngle(Instant moment, Site site, Orbit orbit) {
        double dayShare = floorMod(moment.getEpochSecond() + moment.getNano() / 1e9, SECONDS_A_DAY) / SECONDS_A_DAY;
        double degrees = 360 * dayShare - 180 + site.longitudeDegrees() + Math.toDegrees(orbit.equationOfTime);
        return Math.IEEEremainder(Math.toRadians(degrees), 2 * Math.PI);
    }

    private static double floorMod(double value, double modulus) {
        double rest = value % modulus;
        return rest < 0 ? rest + modulus : rest;
    }

    /** Declination and equation of time in radians. */
    private record Orbit(double declination, double equationOfTime) {
        static Orbit at(Instant moment) {
            double julian = EPOCH_1970 + (moment.getEpochSecond() + moment.getNano() / 1e9) / SECONDS_A_DAY;
            double century = (julian - EPOCH_2000) / 36_525;
            double meanLongitude = Math.toRadians(280.46646 + century * (36_000.76983 + century * 0.0003032));
            double anomaly = Math.toRadians(357.52911 + century * (35_999.05029 - century * 0.0001537));
            double eccentricity = 0.016708634 - century * (0.000042037 + century * 0.0000001267);
            double centre = Math.sin(anomaly) * (1.914602 - century * (0.004817 + century * 0.000014))
                    + Math.sin(2 * anomaly) * (0.019993 - century * 0.000101) + Math.sin(3 * anomaly) * 0.000289;
            double node = Math.toRadians(125.04 - 1934.136 * century);
            double longitude = meanLongitude + Math.toRadians(centre - 0.00569 - 0.00478 * Math.sin(node));
            double meanObliquity = 23 + (26 + (21.448 - century * (46.815 + century * (0.00059 - century * 0.001813))) / 60) / 60;
            double obliquity = Math.toRadians(meanObliquity + 0.00256 * Math.cos(node));
            double y = Math.pow(Math.tan(obliquity / 2), 2);
            double equation = y * Math.sin(2 * meanLongitude) - 2 * eccentricity * Math.sin(anomaly)
                    + 4 * eccentricity * y * Math.sin(anomaly) * Math.cos(2 * meanLongitude)
                    - 0.5 * y * y * Math.sin(4 * meanLongitude) - 1.25 * eccentricity * eccentricity * Math.sin(2 * anomaly);
            return new Orbit(Math.asin(Math.sin(obliquity) * Math.sin(longitude)), equation);
        }
    }
}
