package coldproof.machine.sensors;

import coldproof.trace.Channel;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;

/** Finds what the library of system information measures here, of the channels that are wanted. */
final class LibrarySensors {
    private static final double MILLI = 1e3;
    private static final double MEGA = 1e6;

    private final SystemLibrary library;
    private final Set<Channel> wanted;
    private final List<Sensor> found = new ArrayList<>();
    private final List<String> missing = new ArrayList<>();

    LibrarySensors(SystemLibrary library, Set<Channel> wanted) {
        this.library = library;
        this.wanted = wanted;
    }

    /** Looks for everything wanted; call once. */
    FoundSensors find() {
        add("die temperature of the processor [°C]", Channel.DIE_TEMPERATURE, library -> orNothing(library.dieCelsius()));
        fans();
        add("clock mean of the processors [MHz]", Channel.CLOCK, LibrarySensors::meanMegahertz);
        LoadShare share = new LoadShare();
        add("utilisation [%]", Channel.UTILISATION, library -> share.between(busyAndAll(library)));
        List<SystemLibrary.Battery> batteries = asked("battery", SystemLibrary::batteries).orElse(List.of());
        for (int i = 0; i < batteries.size(); i++) {
            if (isThere(batteries.get(i))) {
                battery(i, batteries.get(i));
            }
        }
        return new FoundSensors(found, missing, new LibraryPower(library));
    }

    private void fans() {
        int fans = wanted.contains(Channel.FAN) ? asked("fan", SystemLibrary::fanRpm).orElse(new int[0]).length : 0;
        for (int i = 0; i < fans; i++) {
            int fan = i;
            add("fan speed fan" + (i + 1) + " [rpm]", Channel.FAN, library -> library.fanRpm().length > fan ? library.fanRpm()[fan] : Double.NaN);
        }
    }

    private void battery(int number, SystemLibrary.Battery found) {
        String name = found.name();
        String title = name == null || name.isBlank() ? "battery" + (number + 1) : name.strip();
        add("battery charge " + title + " [%]", Channel.BATTERY_CHARGE, ofBattery(number, battery -> 100 * orNothing(battery.chargeShare())));
        add("battery temperature " + title + " [°C]", Channel.BATTERY_TEMPERATURE, ofBattery(number, battery -> battery.celsius() == 0 ? Double.NaN : battery.celsius()));
        if (!found.relative()) {
            add("battery power " + title + " [W]", Channel.SYSTEM_POWER,
                    ofBattery(number, battery -> battery.discharging() && !battery.plugged() ? Math.abs(battery.milliwatts()) / MILLI : Double.NaN));
        }
    }

    private static ToDoubleFunction<SystemLibrary> ofBattery(int number, ToDoubleFunction<SystemLibrary.Battery> reading) {
        return library -> {
            List<SystemLibrary.Battery> now = library.batteries();
            return now.size() > number && isThere(now.get(number)) ? reading.applyAsDouble(now.get(number)) : Double.NaN;
        };
    }

    /** A system without a battery may show one that is full of nothing. */
    static boolean isThere(SystemLibrary.Battery battery) {
        return battery.fullCapacity() > 1;
    }

    /** 0 and less is how the library says that there is none. */
    private static double orNothing(double value) {
        return value > 0 ? value : Double.NaN;
    }

    private static double meanMegahertz(SystemLibrary library) {
        return Arrays.stream(library.clockHertz()).filter(hertz -> hertz > 0).average().orElse(Double.NaN) / MEGA;
    }

    private static long[] busyAndAll(SystemLibrary library) {
        long[] ticks = library.loadTicks();
        long all = Arrays.stream(ticks).sum();
        return ticks.length > LoadShare.WAITS ? new long[] {all - ticks[LoadShare.IDLE] - ticks[LoadShare.WAITS], all} : new long[] {0, 0};
    }

    /** Takes a sensor in when it is wanted, and shows at once something that can be true unless it takes a second reading to. */
    private void add(String heading, Channel channel, ToDoubleFunction<SystemLibrary> reading) {
        if (!wanted.contains(channel)) {
            return;
        }
        LibrarySensor sensor = new LibrarySensor(heading, channel, library, reading);
        boolean silentAtFirst = channel == Channel.UTILISATION || channel == Channel.SYSTEM_POWER;
        if (silentAtFirst || BelievableSensor.isPossible(channel, sensor.read(0))) {
            found.add(new BelievableSensor(sensor));
        } else {
            sensor.remark().ifPresent(missing::add);
        }
    }

    private <T> Optional<T> asked(String what, Function<SystemLibrary, T> question) {
        try {
            return Optional.ofNullable(question.apply(library));
        } catch (RuntimeException | LinkageError failed) {
            missing.add("no " + what + ": the system did not answer (" + LibraryLoader.firstLine(failed) + ")");
            return Optional.empty();
        }
    }
}
