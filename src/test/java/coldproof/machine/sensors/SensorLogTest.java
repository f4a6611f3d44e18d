package coldproof.machine.sensors;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.trace.Channel;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Units and paths: Linux kernel documentation (hwmon sysfs-interface, sysfs-class-power, cpufreq, powercap, proc). */
class SensorLogTest {
    @TempDir
    Path root;

    private void write(String file, String text) throws IOException {
        Path path = root.resolve(file);
        Files.createDirectories(path.getParent());
        Files.writeString(path, text + "\n");
    }

    @BeforeEach
    void machine() throws IOException {
        write("sys/class/hwmon/hwmon3/name", "coretemp");
        write("sys/class/hwmon/hwmon3/temp1_input", "71500");
        write("sys/class/hwmon/hwmon3/temp1_label", "Package id 0");
        write("sys/class/hwmon/hwmon1/name", "board");
        write("sys/class/hwmon/hwmon1/fan1_input", "2310");
        write("sys/class/hwmon/hwmon1/temp1_input", "39000");
        write("sys/class/hwmon/hwmon1/temp2_input", "broken");
        write("sys/class/power_supply/BAT0/type", "Battery");
        write("sys/class/power_supply/BAT0/capacity", "83");
        write("sys/class/power_supply/BAT0/temp", "214");
        write("sys/class/power_supply/BAT0/current_now", "-1500000");
        write("sys/class/power_supply/BAT0/voltage_now", "12000000");
        write("sys/devices/system/cpu/cpufreq/policy0/scaling_cur_freq", "3200000");
        write("sys/class/powercap/intel-rapl:0/name", "package-0");
        write("sys/class/powercap/intel-rapl:0/energy_uj", "1000000");
        write("sys/class/powercap/intel-rapl:0/max_energy_range_uj", "262143328850");
        write("proc/stat", "cpu 100 0 50 800 50 0 0 0 0 0");
    }

    private Map<String, Double> read(double seconds, List<Sensor> sensors) {
        return sensors.stream().collect(Collectors.toMap(Sensor::heading, sensor -> sensor.read(seconds)));
    }

    @Test
    void everySensorIsReadInItsUnit() throws IOException {
        FoundSensors found = new LinuxSensors(root).find();
        Map<String, Double> first = read(0, found.sensors());
        assertEquals(71.5, first.get("die temperature coretemp Package id 0 [°C]"));
        assertEquals(39.0, first.get("board temperature board temp1 [°C]"));
        assertEquals(2310.0, first.get("fan speed board fan1 [rpm]"));
        assertEquals(83.0, first.get("battery charge BAT0 [%]"));
        assertEquals(21.4, first.get("battery temperature BAT0 [°C]"), 1e-12);
        assertEquals(18.0, first.get("battery power BAT0 [W]"), 1e-12);
        assertEquals(3200.0, first.get("clock policy0 [MHz]"));
        assertTrue(Double.isNaN(first.get("package power package-0 [W]")));
        assertFalse(first.containsKey("board temperature board temp2 [°C]"));
        write("sys/class/powercap/intel-rapl:0/energy_uj", "43000000");
        write("proc/stat", "cpu 175 0 50 815 60 0 0 0 0 0");
        Map<String, Double> second = read(1.5, found.sensors());
        assertEquals(28.0, second.get("package power package-0 [W]"), 1e-12);
        assertEquals(75.0, second.get("utilisation [%]"), 1e-12);
        assertEquals(List.of(), found.missing());
    }

    @Test
    void anEnergyCounterThatStartsAgainLosesNothing() {
        assertEquals(300, EnergyCounter.spent(262_143_328_750L, 200, 262_143_328_850L));
        assertTrue(Double.isNaN(EnergyCounter.spent(100, 50, 0)));
    }

    @Test
    void aDieAtZeroOrASensorThatVanishesIsAMissingValue() throws IOException {
        List<Sensor> found = new LinuxSensors(root).find().sensors();
        write("sys/class/hwmon/hwmon3/temp1_input", "0");
        assertTrue(Double.isNaN(read(0, found).get("die temperature coretemp Package id 0 [°C]")));
        Files.delete(root.resolve("sys/class/hwmon/hwmon1/fan1_input"));
        assertTrue(Double.isNaN(read(1, found).get("fan speed board fan1 [rpm]")));
    }

    @Test
    void whatIsMissingIsSaidInOneSentence(@TempDir Path bare) throws IOException {
        SensorLog.Report report = new MachineSensors(bare, 1).log(bare.resolve("log.csv")).finish();
        assertEquals(List.of(), report.columns());
        assertEquals(List.of("nothing here measures die temperature, package power, clock, fan speed (looked in hwmon, thermal zones, powercap and cpufreq)"),
                report.missing());
    }

    /** A header without a fan shows 0, as a fan that stands still does; once it was seen turning, 0 is a reading. */
    @Test
    void aFanAtZeroIsBelievedOnceItTurned() throws IOException {
        write("sys/class/hwmon/hwmon1/fan1_input", "0");
        Sensor fan = new LinuxSensors(root).find().sensors().stream().filter(sensor -> sensor.channel() == Channel.FAN).findFirst().orElseThrow();
        assertTrue(Double.isNaN(fan.read(0)));
        assertTrue(fan.remark().orElseThrow().startsWith("fan speed board fan1 [rpm] was 0 throughout"), fan.remark()::toString);
        write("sys/class/hwmon/hwmon1/fan1_input", "1800");
        assertEquals(1800, fan.read(1));
        write("sys/class/hwmon/hwmon1/fan1_input", "0");
        assertEquals(0, fan.read(2));
        assertTrue(fan.remark().isEmpty());
    }

    /** sysfs-class-power: status tells the direction; what goes into the battery is not what the device draws. */
    @Test
    void aBatteryThatIsChargedSaysNothingOfTheDevicesPower() throws IOException {
        Sensor power = new BatteryPower("battery power BAT0 [W]", root.resolve("sys/class/power_supply/BAT0"));
        write("sys/class/power_supply/BAT0/status", "Discharging");
        assertEquals(18.0, power.read(0), 1e-12);
        write("sys/class/power_supply/BAT0/status", "Charging");
        assertTrue(Double.isNaN(power.read(1)));
    }

    @Test
    void aSensorThatFallsSilentIsSaidWithTheTime() throws IOException {
        LogColumn fan = new LogColumn(new LinuxSensors(root).find().sensors().stream().filter(sensor -> sensor.channel() == Channel.FAN).findFirst().orElseThrow());
        assertEquals("2310", fan.cell(0));
        assertEquals("2310", fan.cell(12.2));
        Files.delete(root.resolve("sys/class/hwmon/hwmon1/fan1_input"));
        assertEquals("", fan.cell(13.2));
        assertTrue(fan.remark().isEmpty(), "one silent row may be chance");
        assertEquals("", fan.cell(14.2));
        assertEquals("fan speed board fan1 [rpm] gave no value after 12 s", fan.remark().orElseThrow());
    }

    @Test
    void aColumnWithoutAnyValueIsNotLeftInTheLog(@TempDir Path folder) throws IOException {
        write("sys/class/hwmon/hwmon1/fan1_input", "0");
        SensorLog.Report report = new MachineSensors(root, 1).log(folder.resolve("log.csv")).finish();
        List<String> lines = Files.readAllLines(folder.resolve("log.csv"));
        assertFalse(lines.get(0).contains("fan"), lines.get(0));
        assertTrue(lines.stream().allMatch(line -> line.split(",", -1).length == report.columns().size() + 1), lines::toString);
        assertEquals(List.of("log.csv"), names(folder));
    }

    private static List<String> names(Path folder) throws IOException {
        try (Stream<Path> inside = Files.list(folder)) {
            return inside.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }

    /** The kernel's readings in these units cannot be: 4095 °C, a fan register of all ones, a charge of 255 %. */
    @Test
    void whatCannotBeTrueIsAMissingValue() throws IOException {
        List<Sensor> found = new LinuxSensors(root).find().sensors();
        write("sys/class/hwmon/hwmon3/temp1_input", "4095000");
        write("sys/class/hwmon/hwmon1/fan1_input", "65535");
        write("sys/class/power_supply/BAT0/capacity", "255");
        Map<String, Double> read = read(0, found);
        assertTrue(Double.isNaN(read.get("die temperature coretemp Package id 0 [°C]")));
        assertTrue(Double.isNaN(read.get("fan speed board fan1 [rpm]")));
        assertTrue(Double.isNaN(read.get("battery charge BAT0 [%]")));
    }

    @Test
    void theLogHasAHeadingARowAtOnceAndOneAtTheEnd(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("log.csv");
        MachineSensors sensors = new MachineSensors(root, 1);
        SensorLog log = sensors.log(file);
        SensorLog.Report report = log.finish();
        List<String> lines = Files.readAllLines(file);
        assertTrue(lines.get(0).startsWith("time [s],fan speed board fan1 [rpm],board temperature board temp1 [°C],"), lines.get(0));
        assertEquals(report.rows() + 1, lines.size());
        assertTrue(report.rows() >= 1);
        assertEquals(71.5, sensors.live().read().dieCelsius().orElseThrow());
        assertTrue(report.costShare() > 0 && report.costShare() < 1, () -> "cost " + report.costShare());
    }
}
