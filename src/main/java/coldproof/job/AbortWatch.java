package coldproof.job;

import coldproof.machine.sensors.LiveSensors;
import coldproof.plan.AbortLimits;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/** Watches the plan's abort limits from live telemetry while a trial runs, and that no frozen cell is charged whatever the plan says. */
final class AbortWatch {
    private static final double FROZEN = 0; // °C of the cell; charger data sheets suspend charging below

    private final AbortLimits limits;
    private final LiveSensors sensors;
    private final Set<String> watched = new LinkedHashSet<>();
    private final Set<String> lost = new LinkedHashSet<>();
    private volatile LiveSensors.Snapshot last;

    AbortWatch(AbortLimits limits, LiveSensors sensors) {
        this.limits = limits;
        this.sensors = sensors;
    }

    /** What is beyond a limit now, in a sentence; empty while all is within, or nothing can be read. */
    Optional<String> broken() {
        LiveSensors.Snapshot now = look();
        if (beyond(now.dieCelsius(), limits.dieAboveCelsius(), 1)) {
            return said("the die is at %.1f °C, above the plan's limit of %.1f °C", now.dieCelsius(), limits.dieAboveCelsius().getAsDouble());
        }
        if (beyond(now.batteryPercent(), limits.batteryBelowPercent(), -1)) {
            return said("the battery is at %.0f %%, below the plan's limit of %.0f %%", now.batteryPercent(), limits.batteryBelowPercent().getAsDouble());
        }
        double coldest = Math.max(FROZEN, limits.cellBelowCelsiusWhileCharging().orElse(FROZEN));
        if (now.charging().orElse(false) && beyond(now.cellCelsius(), OptionalDouble.of(coldest), -1)) {
            return said("the cell is at %.1f °C while charging, below %.1f °C: unplug the charger", now.cellCelsius(), coldest);
        }
        return Optional.empty();
    }

    private LiveSensors.Snapshot look() {
        LiveSensors.Snapshot now = sensors.read();
        last = now;
        follow("die temperature", limits.dieAboveCelsius(), now.dieCelsius());
        follow("battery", limits.batteryBelowPercent(), now.batteryPercent());
        follow("cell temperature while charging", limits.cellBelowCelsiusWhileCharging(), now.cellCelsius());
        return now;
    }

    private void follow(String what, OptionalDouble limit, OptionalDouble shown) {
        if (limit.isPresent() && shown.isPresent()) {
            watched.add(what);
            lost.remove(what);
        } else if (limit.isPresent()) {
            lost.add(what);
        }
    }

    /** What was seen last. */
    LiveSensors.Snapshot last() {
        return last;
    }

    /** Limits of the plan that nothing here can watch. */
    List<String> unwatched() {
        look();
        return lost.stream().map(what -> "The plan's abort limit on the " + what + " is not watched: this machine shows no such sensor. Keep an eye on it.").toList();
    }

    /** Limits that were watched and are no more, since the sensor fell silent. */
    List<String> lost() {
        return lost.stream().filter(watched::contains).map(what -> "The plan's abort limit on the " + what + " was not watched to the end: its sensor fell silent.").toList();
    }

    private static boolean beyond(OptionalDouble value, OptionalDouble limit, int sign) {
        return value.isPresent() && limit.isPresent() && sign * (value.getAsDouble() - limit.getAsDouble()) > 0;
    }

    private static Optional<String> said(String pattern, OptionalDouble value, double limit) {
        return Optional.of(String.format(Locale.ROOT, pattern, value.getAsDouble(), limit));
    }
}
