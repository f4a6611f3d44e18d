package coldproof.job;

import coldproof.machine.sensors.LiveSensors;
import coldproof.machine.sensors.SensorReading;
import coldproof.reason.checklist.Ask;
import coldproof.study.Observed;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * What the sensors of this computer show of the conditions a trial starts from. They are looked for when first asked. Only reads; what no sensor
 * shows is not made up.
 */
public final class StartSensors {
    /** No sensor is asked. */
    public static final StartSensors NONE = new StartSensors(new Nowhere());

    private final Supplier<Optional<LiveSensors>> place;
    private Optional<LiveSensors> found = Optional.empty();

    private StartSensors(Supplier<Optional<LiveSensors>> place) {
        this.place = place;
    }

    /** By name, for the same reason as the clock of {@link coldproof.machine.MachineClock#monotonicNanos}. */
    private static final class Nowhere implements Supplier<Optional<LiveSensors>> {
        @Override
        public Optional<LiveSensors> get() {
            return Optional.empty();
        }
    }

    /** Those of this computer. */
    static StartSensors atHand() {
        return new StartSensors(() -> Optional.of(LiveSensors.atHand()));
    }

    /** These. */
    static StartSensors of(LiveSensors sensors) {
        return new StartSensors(() -> Optional.of(sensors));
    }

    /** What is shown now of what is asked for; empty where no sensor shows it. */
    Optional<Observed> shown(Ask ask) {
        if (ask != Ask.DIE && ask != Ask.BATTERY && ask != Ask.POWER && ask != Ask.AIR) {
            return Optional.empty();
        }
        found = found.isPresent() ? found : place.get();
        return found.map(LiveSensors::read).flatMap(now -> shown(ask, now));
    }

    private static Optional<Observed> shown(Ask ask, LiveSensors.Snapshot now) {
        return switch (ask) {
            case DIE -> now.die().map(die -> amount(die, "°C"));
            case BATTERY -> now.battery().map(battery -> amount(battery, "%"));
            case AIR -> now.air().map(air -> amount(air, "°C"));
            default -> now.plugged().map(plugged -> Observed.of(plugged ? "wall" : "battery").by("power supply"));
        };
    }

    private static Observed amount(SensorReading reading, String unit) {
        return Observed.of(Math.rint(reading.amount() * 10) / 10, unit).by(reading.sensor());
    }
}
