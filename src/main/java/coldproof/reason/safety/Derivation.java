package coldproof.reason.safety;

import coldproof.physics.Frostbite;
import coldproof.physics.HeatIndex;
import coldproof.physics.Psychrometrics;
import coldproof.physics.RelativeHumidity;
import coldproof.physics.WindChill;
import coldproof.quantity.Celsius;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Works out the derived readings of a scene. */
final class Derivation {
    /** Warmest air for which a heat index is not worth asking, °C: the published bands begin at 80 °F. */
    private static final double HEAT_FROM = 20;
    /** A working pack runs up to 15 K above its surroundings (common practice). */
    private static final double SELF_HEATING = 15;
    /** K; the way to a dew point and back rounds: saturated air has its own temperature as dew point to this. */
    private static final double ROUNDING = 1e-9;
    private static final Celsius WARM_ROOM = new Celsius(21);

    private final Map<Reading, Value> values = new EnumMap<>(Reading.class);
    private final SafetyScene scene;

    private Derivation(SafetyScene scene) {
        this.scene = scene;
        values.putAll(scene.values());
    }

    /**
     * Readings taken and derived.
     *
     * @param phase the part of the job asked about. After the return a device that was not measured is taken to be as the test air was.
     */
    static Map<Reading, Value> of(SafetyScene scene, Optional<Phase> phase) {
        Derivation derivation = new Derivation(scene);
        derivation.assume(phase);
        derivation.derive();
        return derivation.values;
    }

    /** The readings to take so that this one is known; itself where it is taken. */
    static List<Reading> inputs(Reading reading) {
        if (!reading.derived()) {
            return List.of(reading);
        }
        return switch (reading) {
            case DEW_POINT, FROST_POINT, WARMED_HUMIDITY, HEAT_INDEX -> List.of(Reading.AIR, Reading.HUMIDITY);
            case ROOM_DEW_POINT -> List.of(Reading.ROOM, Reading.ROOM_HUMIDITY);
            case SURFACE_MARGIN -> List.of(Reading.DEVICE, Reading.ROOM, Reading.ROOM_HUMIDITY);
            case ARRIVAL_MARGIN -> List.of(Reading.AIR, Reading.ROOM, Reading.ROOM_HUMIDITY);
            case OUTGOING_MARGIN -> List.of(Reading.AIR, Reading.HUMIDITY, Reading.ROOM);
            case STEP -> List.of(Reading.AIR, Reading.ROOM);
            case STAY_MARGIN -> List.of(Reading.AIR, Reading.STAY);
            default -> List.of(Reading.AIR);
        };
    }

    private void assume(Optional<Phase> phase) {
        values.putIfAbsent(Reading.OUTDOORS, Value.of("yes"));
        values.putIfAbsent(Reading.CHARGING_INHIBITED, Value.of("no"));
        values.putIfAbsent(Reading.RESIDUAL_CURRENT, Value.of("unknown"));
        boolean back = phase.filter(Phase::afterReturn).isPresent();
        if (back && !values.containsKey(Reading.DEVICE) && values.containsKey(Reading.AIR)) {
            values.put(Reading.DEVICE, values.get(Reading.AIR));
        }
        values.putIfAbsent(Reading.CHARGING, Value.of(phase.filter(asked -> asked == Phase.CHARGING).isPresent() ? "yes" : "no"));
    }

    private OptionalDouble number(Reading reading) {
        Value value = values.get(reading);
        return value == null ? OptionalDouble.empty() : value.number();
    }

    private void put(Reading reading, double number) {
        values.put(reading, Value.of(number));
    }

    private void derive() {
        moisture();
        body();
        margins();
        cells();
        stay();
    }

    private void stay() {
        OptionalDouble planned = number(Reading.STAY);
        OutdoorBudget.ofValues(values).binding().ifPresent(limit -> {
            if (planned.isPresent()) {
                put(Reading.STAY_MARGIN, limit.seconds() - planned.getAsDouble());
            }
        });
    }

    private void moisture() {
        OptionalDouble air = number(Reading.AIR);
        OptionalDouble humidity = number(Reading.HUMIDITY);
        if (air.isPresent() && humidity.isPresent() && inRange(air.getAsDouble())) {
            Celsius celsius = new Celsius(air.getAsDouble());
            RelativeHumidity relative = new RelativeHumidity(humidity.getAsDouble());
            Psychrometrics.dewPoint(celsius, relative).ifPresent(dew -> put(Reading.DEW_POINT, dew.degrees()));
            Psychrometrics.frostPoint(celsius, relative).ifPresent(frost -> put(Reading.FROST_POINT, frost.degrees()));
            put(Reading.WARMED_HUMIDITY, Psychrometrics.relativeHumidityAt(WARM_ROOM, celsius, relative));
        }
        OptionalDouble room = number(Reading.ROOM);
        OptionalDouble roomHumidity = number(Reading.ROOM_HUMIDITY);
        if (room.isPresent() && roomHumidity.isPresent()) {
            Psychrometrics.dewPoint(new Celsius(room.getAsDouble()), new RelativeHumidity(roomHumidity.getAsDouble()))
                    .ifPresent(dew -> put(Reading.ROOM_DEW_POINT, dew.degrees()));
        }
    }

    private static boolean inRange(double air) {
        return air >= Psychrometrics.WATER_LOWEST && air <= Psychrometrics.WATER_HIGHEST;
    }

    private void body() {
        OptionalDouble air = number(Reading.AIR);
        if (air.isEmpty()) {
            return;
        }
        Celsius celsius = new Celsius(air.getAsDouble());
        double wind = number(Reading.WIND).orElse(0);
        put(Reading.WIND_CHILL, WindChill.of(celsius, wind).degrees());
        Frostbite.minutes(celsius, wind).ifPresent(minutes -> put(Reading.FROSTBITE, 60 * minutes));
        OptionalDouble humidity = number(Reading.HUMIDITY);
        if (humidity.isPresent() && air.getAsDouble() >= HEAT_FROM && inRange(air.getAsDouble())) {
            put(Reading.HEAT_INDEX, HeatIndex.of(celsius, new RelativeHumidity(humidity.getAsDouble())).degrees());
        }
    }

    private void margins() {
        difference(Reading.SURFACE_MARGIN, number(Reading.DEVICE), number(Reading.ROOM_DEW_POINT));
        difference(Reading.ARRIVAL_MARGIN, number(Reading.AIR), number(Reading.ROOM_DEW_POINT));
        OptionalDouble leaving = number(Reading.DEVICE).isPresent() ? number(Reading.DEVICE) : number(Reading.ROOM);
        difference(Reading.OUTGOING_MARGIN, leaving, number(Reading.DEW_POINT));
        if (number(Reading.AIR).isPresent() && number(Reading.ROOM).isPresent()) {
            put(Reading.STEP, Math.abs(number(Reading.AIR).getAsDouble() - number(Reading.ROOM).getAsDouble()));
        }
    }

    private void difference(Reading margin, OptionalDouble from, OptionalDouble to) {
        if (from.isPresent() && to.isPresent()) {
            put(margin, Math.rint((from.getAsDouble() - to.getAsDouble()) / ROUNDING) * ROUNDING);
        }
    }

    private void cells() {
        OptionalDouble air = number(Reading.AIR);
        OptionalDouble device = number(Reading.DEVICE);
        OptionalDouble known = number(Reading.CELL).isPresent() ? number(Reading.CELL) : device;
        if (known.isPresent()) {
            put(Reading.COLDEST_CELL, known.getAsDouble());
            put(Reading.WARMEST_CELL, known.getAsDouble());
        } else if (air.isPresent()) {
            put(Reading.COLDEST_CELL, air.getAsDouble());
            put(Reading.WARMEST_CELL, air.getAsDouble() + SELF_HEATING);
        }
        if (air.isPresent()) {
            put(Reading.COLDEST_SURFACE, Math.min(air.getAsDouble(), device.orElse(air.getAsDouble())));
        } else {
            device.ifPresent(degrees -> put(Reading.COLDEST_SURFACE, degrees));
        }
    }
}
