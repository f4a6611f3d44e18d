package coldproof.machine.sensors;

import coldproof.trace.Channel;
import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;

/**
 * Finds the sensors below a root folder. Numbers of hwmon folders change from boot to boot, so columns are named by chip and label.
 *
 * @see "Linux kernel documentation: hwmon/sysfs-interface, driver-api/thermal/sysfs-api, admin-guide/pm/cpufreq, power/powercap/powercap,
 *     ABI/testing/sysfs-class-power, filesystems/proc"
 */
final class LinuxSensors {
    private static final double MILLI = 1e3;
    private static final double MICRO = 1e6;
    private static final Set<String> DIE_CHIPS = Set.of("coretemp", "k10temp", "zenpower", "k8temp", "cpu_thermal", "cpu-thermal", "soc_thermal", "soc-thermal", "scpi_sensors",
            "x86_pkg_temp", "tcpu", "amdgpu");
    private static final Set<String> DRIVES = Set.of("nvme", "drivetemp");

    private final Path root;
    private final List<Sensor> found = new ArrayList<>();
    private final List<String> missing = new ArrayList<>();

    LinuxSensors(Path root) {
        this.root = root;
    }

    /** Looks for everything; call once. */
    FoundSensors find() {
        hwmon();
        zones();
        clocks();
        energy();
        batteries();
        if (Files.isReadable(root.resolve("proc/stat"))) {
            add(new Utilisation(root.resolve("proc/stat")));
        }
        return new FoundSensors(found, missing, power());
    }

    private void hwmon() {
        for (Path chip : folders("sys/class/hwmon", "")) {
            String name = KernelFile.text(chip.resolve("name"));
            if (DRIVES.contains(name)) {
                continue;
            }
            boolean die = DIE_CHIPS.contains(name.toLowerCase(Locale.ROOT));
            boolean air = Files.exists(chip.resolve("humidity1_input")); // a chip for humidity hangs in air, be it that of a case
            for (Path file : folders(chip, "_input")) {
                String item = file.getFileName().toString().replace("_input", "");
                String label = KernelFile.text(chip.resolve(item + "_label"));
                String title = (name + " " + (label.isEmpty() ? item : label)).strip();
                if (item.startsWith("temp") && KernelFile.number(file).isPresent()) {
                    Channel channel = die ? Channel.DIE_TEMPERATURE : air ? Channel.AMBIENT : name.startsWith("BAT") ? Channel.BATTERY_TEMPERATURE : Channel.BOARD_TEMPERATURE;
                    add(new ScaledSensor(channel.label() + " " + title + " [°C]", channel, file, MILLI));
                } else if (item.startsWith("fan") && KernelFile.number(file).isPresent()) {
                    add(new ScaledSensor("fan speed " + title + " [rpm]", Channel.FAN, file, 1));
                } else if (item.startsWith("power") && die && KernelFile.number(file).isPresent()) {
                    add(new ScaledSensor("package power " + title + " [W]", Channel.PACKAGE_POWER, file, MICRO));
                }
            }
        }
    }

    private void zones() {
        boolean dieKnown = found.stream().anyMatch(sensor -> sensor.channel() == Channel.DIE_TEMPERATURE);
        for (Path zone : folders("sys/class/thermal", "")) {
            String type = KernelFile.text(zone.resolve("type"));
            Path file = zone.resolve("temp");
            if (zone.getFileName().toString().startsWith("thermal_zone") && KernelFile.number(file).isPresent()) {
                boolean die = DIE_CHIPS.contains(type.toLowerCase(Locale.ROOT));
                if (die && !dieKnown) {
                    add(new ScaledSensor("die temperature " + type + " [°C]", Channel.DIE_TEMPERATURE, file, MILLI));
                }
            }
        }
    }

    private void clocks() {
        for (Path policy : folders("sys/devices/system/cpu/cpufreq", "")) {
            Path measured = policy.resolve("cpuinfo_cur_freq");
            Path asked = policy.resolve("scaling_cur_freq");
            Path file = KernelFile.number(measured).isPresent() ? measured : asked;
            if (policy.getFileName().toString().startsWith("policy") && KernelFile.number(file).isPresent()) {
                add(new ScaledSensor("clock " + policy.getFileName() + " [MHz]", Channel.CLOCK, file, MILLI));
            }
        }
    }

    private void energy() {
        boolean refused = false;
        for (Path zone : folders("sys/class/powercap", "")) {
            String name = KernelFile.text(zone.resolve("name"));
            boolean whole = name.startsWith("package") || name.equals("psys");
            Path counter = zone.resolve("energy_uj");
            if (whole && KernelFile.number(counter).isPresent()) {
                boolean system = name.equals("psys");
                add(new EnergyCounter((system ? "system power " : "package power ") + name + " [W]", system ? Channel.SYSTEM_POWER : Channel.PACKAGE_POWER, counter,
                        KernelFile.number(zone.resolve("max_energy_range_uj")).orElse(0)));
            } else {
                refused |= whole && Files.exists(counter) && !Files.isReadable(counter);
            }
        }
        if (refused) {
            missing.add("the energy counter may be read by root only, since kernel 5.10: power is missing; import it from elsewhere or ask the administrator");
        }
    }

    private void batteries() {
        for (Path supply : supplies(true)) {
            String name = supply.getFileName().toString();
            if (KernelFile.number(supply.resolve("capacity")).isPresent()) {
                add(new ScaledSensor("battery charge " + name + " [%]", Channel.BATTERY_CHARGE, supply.resolve("capacity"), 1));
            }
            if (KernelFile.number(supply.resolve("temp")).isPresent()) {
                add(new ScaledSensor("battery temperature " + name + " [°C]", Channel.BATTERY_TEMPERATURE, supply.resolve("temp"), 10)); // tenths here, by the ABI
            }
            if (BatteryPower.isThere(supply)) {
                add(new BatteryPower("battery power " + name + " [W]", supply));
            }
        }
    }

    private PowerState power() {
        List<Path> batteries = supplies(true);
        List<Path> sources = supplies(false);
        return batteries.isEmpty() && sources.isEmpty() ? PowerState.UNKNOWN : new KernelPower(batteries, sources);
    }

    /** The folders of the batteries of the device, or of its other sources. A battery of scope "Device" is in a mouse or the like. */
    private List<Path> supplies(boolean batteries) {
        return folders("sys/class/power_supply", "").stream().filter(supply -> !KernelFile.text(supply.resolve("scope")).equals("Device"))
                .filter(supply -> KernelFile.text(supply.resolve("type")).equals("Battery") == batteries).toList();
    }

    private void add(Sensor sensor) {
        if (found.stream().noneMatch(other -> other.heading().equals(sensor.heading()))) {
            found.add(new BelievableSensor(sensor));
        }
    }

    private Set<Path> folders(String below, String ending) {
        return folders(root.resolve(below), ending);
    }

    /** What lies in a folder, by name; nothing when there is no such folder. */
    private static Set<Path> folders(Path folder, String ending) {
        Set<Path> inside = new TreeSet<>();
        if (Files.isDirectory(folder)) {
            try (DirectoryStream<Path> entries = Files.newDirectoryStream(folder, "*" + ending)) {
                entries.forEach(inside::add);
            } catch (IOException unreadable) {
                return inside; // told by what is then missing
            }
        }
        return inside;
    }
}
