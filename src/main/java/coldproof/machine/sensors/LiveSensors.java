package coldproof.machine.sensors;

import coldproof.trace.Channel;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;

/**
 * What this machine says now of the things that abort limits and start conditions are about, from the sensors that {@link SensorLog} writes
 * down. Only reads, from any thread.
 */
public final class LiveSensors {
    /** What is looked at. */
    static final Set<Channel> WATCHED = EnumSet.of(Channel.DIE_TEMPERATURE, Channel.BATTERY_CHARGE, Channel.BATTERY_TEMPERATURE, Channel.AMBIENT);

    private static final Comparator<SensorReading> BY_AMOUNT = Comparator.comparingDouble(SensorReading::amount);

    private final List<Sensor> sensors;
    private final PowerState power;

    LiveSensors(FoundSensors found) {
        sensors = found.sensors().stream().filter(sensor -> WATCHED.contains(sensor.channel())).toList();
        power = found.power();
    }

    /**
     * One look.
     *
     * @param die hottest die sensor, °C
     * @param battery lowest charge of a battery, %
     * @param cell coldest battery, °C
     * @param air a sensor of the air, °C
     * @param charging whether a battery is being charged; empty where there is none that says
     * @param plugged whether the device runs from something else than its battery; empty where nothing says so
     */
    public record Snapshot(Optional<SensorReading> die, Optional<SensorReading> battery, Optional<SensorReading> cell, Optional<SensorReading> air,
            Optional<Boolean> charging, Optional<Boolean> plugged) {
        /** Hottest die sensor, °C. */
        public OptionalDouble dieCelsius() {
            return amount(die);
        }

        /** Lowest charge of a battery, %. */
        public OptionalDouble batteryPercent() {
            return amount(battery);
        }

        /** Coldest battery, °C. */
        public OptionalDouble cellCelsius() {
            return amount(cell);
        }

        private static OptionalDouble amount(Optional<SensorReading> reading) {
            return reading.map(one -> OptionalDouble.of(one.amount())).orElse(OptionalDouble.empty());
        }
    }

    /** Those of this machine. */
    public static LiveSensors atHand() {
        return MachineSensors.atHand(WATCHED).live();
    }

    /** Looks now. What cannot be read, or cannot be true, is left out. */
    public Snapshot read() {
        return new Snapshot(values(Channel.DIE_TEMPERATURE).max(BY_AMOUNT), values(Channel.BATTERY_CHARGE).min(BY_AMOUNT),
                values(Channel.BATTERY_TEMPERATURE).min(BY_AMOUNT), values(Channel.AMBIENT).findFirst(), power.charging(), power.plugged());
    }

    private Stream<SensorReading> values(Channel channel) {
        return sensors.stream().filter(sensor -> sensor.channel() == channel).map(sensor -> new SensorReading(sensor.read(0), name(sensor)))
                .filter(reading -> !Double.isNaN(reading.amount()));
    }

    /** The heading without what it measures and the unit. */
    private static String name(Sensor sensor) {
        String heading = sensor.heading();
        String label = sensor.channel().label() + " ";
        String without = heading.startsWith(label) ? heading.substring(label.length()) : heading;
        int unit = without.lastIndexOf(" [");
        return unit < 0 ? without : without.substring(0, unit);
    }
}
