package coldproof.machine.sensors;

import coldproof.trace.Channel;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.DoubleStream;

/** What this machine says now of the things that abort limits are about, from the sensors that {@link SensorLog} writes down. Only reads. */
public final class LiveSensors {
    private static final Set<Channel> WATCHED = Set.of(Channel.DIE_TEMPERATURE, Channel.BATTERY_CHARGE, Channel.BATTERY_TEMPERATURE);
    private static final double COLDEST = -60; // °C; colder or hotter is a broken sensor (common practice)
    private static final double HOTTEST = 150;

    private final List<Sensor> sensors;
    private final List<Path> batteries;

    LiveSensors(LinuxSensors linux) {
        sensors = linux.found().stream().filter(sensor -> WATCHED.contains(sensor.channel())).toList();
        batteries = linux.batteryFolders();
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
        List<String> status = batteries.stream().map(battery -> KernelFile.text(battery.resolve("status"))).filter(text -> !text.isEmpty()).toList();
        return new Snapshot(values(Channel.DIE_TEMPERATURE, COLDEST, HOTTEST).max(), values(Channel.BATTERY_CHARGE, 0, 100).min(),
                values(Channel.BATTERY_TEMPERATURE, COLDEST, HOTTEST).min(),
                status.isEmpty() ? Optional.empty() : Optional.of(status.contains("Charging")));
    }

    /** Readings of a channel within a range, which NaN is not. */
    private DoubleStream values(Channel channel, double least, double most) {
        return sensors.stream().filter(sensor -> sensor.channel() == channel).mapToDouble(sensor -> sensor.read(0))
                .filter(value -> value >= least && value <= most);
    }
}
