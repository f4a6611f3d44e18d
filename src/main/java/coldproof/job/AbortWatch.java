package coldproof.job;

import coldproof.machine.sensors.LiveSensors;
import coldproof.plan.AbortLimits;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/** Watches the plan's abort limits from live telemetry while a trial runs, and that no frozen cell is charged whatever the plan says. */
final class AbortWatch {
    private static final double FROZEN = 0; // °C of the cell; charger data sheets suspend charging below

    private final AbortLimits limits;
    private final LiveSensors sensors;

    AbortWatch(AbortLimits limits, LiveSensors sensors) {
        this.limits = limits;
        this.sensors = sensors;
    }

    /** What is beyond a limit now, in a sentence; empty while all is within, or nothing can be read. */
    Optional<String> broken() {
        LiveSensors.Snapshot now = sensors.read();
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

    /** Limits of the plan that nothing here can watch. */
    List<String> unwatched() {
        LiveSensors.Snapshot now = sensors.read();
        List<String> unwatched = new ArrayList<>();
        unwatched(unwatched, "die temperature", limits.dieAboveCelsius(), now.dieCelsius().isPresent());
        unwatched(unwatched, "battery", limits.batteryBelowPercent(), now.batteryPercent().isPresent());
        unwatched(unwatched, "cell temperature while charging", limits.cellBelowCelsiusWhileCharging(), now.cellCelsius().isPresent());
        return unwatched;
    }

    private static void unwatched(List<String> to, String what, OptionalDouble limit, boolean sensor) {
        if (limit.isPresent() && !sensor) {
            to.add("The plan's abort limit on the " + what + " is not watched: this machine shows no such sensor. Keep an eye on it.");
        }
    }

    private static boolean beyond(OptionalDouble value, OptionalDouble limit, int sign) {
        return value.isPresent() && limit.isPresent() && sign * (value.getAsDouble() - limit.getAsDouble()) > 0;
    }

    private static Optional<String> said(String pattern, OptionalDouble value, double limit) {
        return Optional.of(String.format(Locale.ROOT, pattern, value.getAsDouble(), limit));
    }
}
