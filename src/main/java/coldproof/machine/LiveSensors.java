package coldproof.machine;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Pattern;

/**
 * What this machine says of itself while it runs, read from the files a Linux kernel offers below {@code /sys/class} (hwmon, thermal,
 * power_supply; units from the kernel's interface documentation). Only reads. What is not there, cannot be read or cannot be true is left
 * out: another system has none of it, and some sensors fail now and then.
 */
public final class LiveSensors {
    private static final Pattern DIE = Pattern.compile(".*(core|cpu|k10|pkg|soc|die).*", Pattern.CASE_INSENSITIVE);
    private static final double COLDEST = -60; // °C; colder or hotter is a broken sensor (common practice)
    private static final double HOTTEST = 150;

    private final Path root;

    /** Sensors below a folder laid out like {@code /sys/class}. */
    public LiveSensors(Path root) {
        this.root = root;
    }

    /** The sensors of this machine. */
    public static LiveSensors atHand() {
        return new LiveSensors(Path.of("/sys/class"));
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

    /** Looks now. */
    public Snapshot read() {
        List<Path> batteries = folders("power_supply").stream().filter(supply -> text(supply.resolve("type")).filter("Battery"::equals).isPresent()).toList();
        List<Double> charge = new ArrayList<>();
        List<Double> cells = new ArrayList<>();
        List<String> status = new ArrayList<>();
        for (Path battery : batteries) {
            number(battery.resolve("capacity")).filter(percent -> percent >= 0 && percent <= 100).ifPresent(charge::add);
            number(battery.resolve("temp")).map(tenths -> tenths / 10).filter(LiveSensors::believable).ifPresent(cells::add);
            text(battery.resolve("status")).ifPresent(status::add);
        }
        return new Snapshot(die(), charge.stream().mapToDouble(x -> x).min(), cells.stream().mapToDouble(x -> x).min(),
                status.isEmpty() ? Optional.empty() : Optional.of(status.contains("Charging")));
    }

    private OptionalDouble die() {
        List<Double> dies = new ArrayList<>();
        for (Path chip : folders("hwmon")) {
            if (text(chip.resolve("name")).filter(name -> DIE.matcher(name).matches()).isPresent()) {
                files(chip, "temp*_input").forEach(file -> milliCelsius(file).ifPresent(dies::add));
            }
        }
        for (Path zone : folders("thermal")) {
            if (text(zone.resolve("type")).filter(type -> DIE.matcher(type).matches()).isPresent()) {
                milliCelsius(zone.resolve("temp")).ifPresent(dies::add);
            }
        }
        return dies.stream().mapToDouble(x -> x).max();
    }

    private static Optional<Double> milliCelsius(Path file) {
        return number(file).map(milli -> milli / 1000).filter(LiveSensors::believable);
    }

    private static boolean believable(double celsius) {
        return celsius >= COLDEST && celsius <= HOTTEST;
    }

    private List<Path> folders(String kind) {
        return files(root.resolve(kind), "*");
    }

    private static List<Path> files(Path folder, String glob) {
        List<Path> found = new ArrayList<>();
        if (!Files.isDirectory(folder)) {
            return found;
        }
        try (DirectoryStream<Path> entries = Files.newDirectoryStream(folder, glob)) {
            entries.forEach(found::add);
        } catch (IOException gone) {
            return List.of(); // a device that went away has no sensors
        }
        return found;
    }

    private static Optional<Double> number(Path file) {
        return text(file).filter(text -> text.matches("-?\\d{1,9}")).map(Double::valueOf);
    }

    /** The text of a file; empty where it is not there or the sensor does not answer. */
    private static Optional<String> text(Path file) {
        try {
            return Files.isReadable(file) ? Optional.of(Files.readString(file, StandardCharsets.US_ASCII).strip()) : Optional.empty();
        } catch (IOException silent) {
            return Optional.empty(); // the kernel answers with an input error where a sensor has nothing to say
        }
    }
}
