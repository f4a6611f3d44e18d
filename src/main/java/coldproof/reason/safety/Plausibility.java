package coldproof.reason.safety;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;

/** Finds readings that are possible on paper but hard to believe: another scale, another sensor, a slip. */
final class Plausibility {
    /** Hottest air in the shade that weather brings, °C: the accepted record is 56.7 °C (1913), later ones 54 °C (from memory). */
    private static final double HOT_AIR = 50;
    /** Highest dew point ever reported, °C (2003, from memory). */
    private static final double HIGHEST_DEW_POINT = 35;
    private static final double COLD_ROOM = 0;
    private static final double HOT_ROOM = 35;
    /** Hurricane force, m/s: nobody carries a computer about in it. */
    private static final double STORM = 33;
    private static final double SNOW_AT_MOST = 8; // °C; wet snow was seen at a few degrees above zero (common practice)
    private static final double RAIN_AT_LEAST = -10; // °C; colder, it is snow (common practice)
    private static final double FOG_AT_LEAST = 75; // %RH

    private final Map<Reading, Value> values;
    private final List<Doubt> doubts = new ArrayList<>();

    private Plausibility(Map<Reading, Value> values) {
        this.values = values;
    }

    static List<Doubt> of(Map<Reading, Value> values) {
        Plausibility check = new Plausibility(values);
        check.air();
        check.sky();
        check.room();
        return check.doubts;
    }

    private OptionalDouble number(Reading reading) {
        Value value = values.get(reading);
        return value == null ? OptionalDouble.empty() : value.number();
    }

    private boolean sky(String word) {
        Value value = values.get(Reading.PRECIPITATION);
        return value != null && value.word().equals(word);
    }

    private void doubt(Reading reading, String text) {
        doubts.add(new Doubt(reading, text));
    }

    private void air() {
        OptionalDouble air = number(Reading.AIR);
        if (air.isPresent() && air.getAsDouble() > HOT_AIR) {
            doubt(Reading.AIR, degrees(air) + " is hotter than weather brings" + fahrenheit(air));
        } else if (number(Reading.DEW_POINT).orElse(0) > HIGHEST_DEW_POINT) {
            doubt(Reading.HUMIDITY, "a dew point of " + degrees(number(Reading.DEW_POINT)) + " was never met in nature: air or humidity is wrong"
                    + fahrenheit(air));
        }
        OptionalDouble wind = number(Reading.WIND);
        if (wind.isPresent() && wind.getAsDouble() > STORM) {
            doubt(Reading.WIND, "a wind of " + round(wind.getAsDouble()) + " m/s is a hurricane: was it km/h?");
        }
    }

    private void sky() {
        OptionalDouble air = number(Reading.AIR);
        if (air.isPresent() && sky("snow") && air.getAsDouble() > SNOW_AT_MOST) {
            doubt(Reading.PRECIPITATION, "snow does not fall at " + degrees(air) + fahrenheit(air));
        }
        if (air.isPresent() && sky("rain") && air.getAsDouble() < RAIN_AT_LEAST) {
            doubt(Reading.PRECIPITATION, "rain does not fall at " + degrees(air));
        }
        OptionalDouble humidity = number(Reading.HUMIDITY);
        if (humidity.isPresent() && sky("fog") && humidity.getAsDouble() < FOG_AT_LEAST) {
            doubt(Reading.HUMIDITY, "fog and a humidity of " + round(humidity.getAsDouble()) + " % do not go together");
        }
    }

    private void room() {
        OptionalDouble room = number(Reading.ROOM);
        if (room.isPresent() && (room.getAsDouble() < COLD_ROOM || room.getAsDouble() > HOT_ROOM)) {
            doubt(Reading.ROOM, degrees(room) + " is no ordinary room" + fahrenheit(room));
        }
        OptionalDouble device = number(Reading.DEVICE);
        if (device.isPresent() && device.getAsDouble() > 100) {
            doubt(Reading.DEVICE, degrees(device) + " is hotter than a device's surface gets" + fahrenheit(device));
        }
        OptionalDouble air = number(Reading.AIR);
        if (device.isPresent() && air.isPresent() && room.isPresent()
                && device.getAsDouble() < Math.min(air.getAsDouble(), room.getAsDouble()) - 5) {
            doubt(Reading.DEVICE, degrees(device) + " is colder than both the test air and the room");
        }
    }

    private static String fahrenheit(OptionalDouble celsius) {
        double meant = (celsius.orElse(Double.NaN) - 32) / 1.8;
        return meant > -30 ? ": was it " + round(celsius.orElse(Double.NaN)) + " °F, which is " + round(meant) + " °C?" : "";
    }

    private static String degrees(OptionalDouble celsius) {
        return round(celsius.orElse(Double.NaN)) + " °C";
    }

    private static String round(double number) {
        return String.format(Locale.ROOT, "%.0f", number);
    }
}
