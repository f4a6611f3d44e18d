package coldproof.machine.sensors;

import coldproof.trace.Channel;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.DoubleStream;

/** What this machine says now of the things that abort limits are about, from the sensors that {@link SensorLog} writes down. Only reads. */
public final class LiveSensors {
    private static final Set<Channel> WATCHED = Set.of(Channel.DIE_TEMPERATURE, Channel.BATTERY_CHARGE, Channel.BATTERY_TEMPERATURE);

    private final List<Sensor> sensors;
    private final PowerState power;

    LiveSensors(FoundSensors found) {
        sensors = found.sensors().stream().filter(sensor -> WATCHED.contains(sensor.channel())).toList();
        power = found.power();
    }

    /**
     * One look.
     *
     * @param dieCelsius hottest die sensor, °C
     * @param batteryPercent lowest charge of a battery, %
     * @param cellCelsius coldest battery, °C
     * @param charging whether a battery is being charged; empty where there is none that says
     */
    public record Snapshot(OptionalDouble dieCelsius, OptionalDouble batteryPercent, OptionalDouble cellCelsius, Optional<Boolean> charging) {}

    /** Looks now. What cannot be read, or cannot be true, is left out. */
    public Snapshot read() {
        return new Snapshot(values(Channel.DIE_TEMPERATURE).max(), values(Channel.BATTERY_CHARGE).min(), values(Channel.BATTERY_TEMPERATURE).min(),
                power.charging());
    }

    private DoubleStream values(Channel channel) {
        return sensors.stream().filter(sensor -> sensor.channel() == channel).mapToDouble(sensor -> sensor.read(0)).filter(value -> !Double.isNaN(value));
    }
}
