package coldproof.machine.sensors;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Files and units as the Linux kernel documents them: hwmon and thermal in m°C, power_supply temp in 0.1 °C, capacity in %. */
class LiveSensorsTest {
    @TempDir
    Path root;

    private void put(String file, String text) throws IOException {
        Path path = root.resolve("sys/class").resolve(file);
        Files.createDirectories(path.getParent());
        Files.writeString(path, text + "\n");
    }

    private LiveSensors.Snapshot read() {
        return new MachineSensors(root, 1).live().read();
    }

    @Test
    void readsTheHottestDieAndTheColdestBattery() throws IOException {
        put("hwmon/hwmon3/name", "coretemp");
        put("hwmon/hwmon3/temp1_input", "71000");
        put("hwmon/hwmon3/temp2_input", "83500");
        put("hwmon/hwmon4/name", "nvme");
        put("hwmon/hwmon4/temp1_input", "99000");
        put("power_supply/AC/type", "Mains");
        put("power_supply/BAT0/type", "Battery");
        put("power_supply/BAT0/temp", "-13");
        put("power_supply/BAT0/capacity", "64");
        put("power_supply/BAT0/status", "Charging");
        LiveSensors.Snapshot now = read();
        assertEquals(OptionalDouble.of(83.5), now.dieCelsius());
        assertEquals(OptionalDouble.of(-1.3), now.cellCelsius());
        assertEquals(OptionalDouble.of(64), now.batteryPercent());
        assertEquals(Optional.of(true), now.charging());
    }

    @Test
    void aZoneOfTheDieDoesWhereThereIsNoChip() throws IOException {
        put("thermal/thermal_zone0/type", "acpitz");
        put("thermal/thermal_zone0/temp", "27800");
        put("thermal/thermal_zone1/type", "x86_pkg_temp");
        put("thermal/thermal_zone1/temp", "55000");
        assertEquals(OptionalDouble.of(55), read().dieCelsius());
    }

    @Test
    void whatIsNotThereOrCannotBeTrueIsLeftOut() throws IOException {
        assertTrue(read().dieCelsius().isEmpty());
        put("hwmon/hwmon0/name", "k10temp");
        put("hwmon/hwmon0/temp1_input", "no number");
        put("hwmon/hwmon0/temp2_input", "-273150");
        put("power_supply/BAT0/type", "Battery");
        put("power_supply/BAT0/capacity", "412");
        LiveSensors.Snapshot now = read();
        assertTrue(now.dieCelsius().isEmpty() && now.batteryPercent().isEmpty() && now.charging().isEmpty());
    }

    @Test
    void fullOrNotChargingIsNotCharging() throws IOException {
        put("power_supply/BAT0/type", "Battery");
        put("power_supply/BAT0/status", "Not charging");
        assertEquals(Optional.of(false), read().charging());
    }

    /** sysfs-class-power: scope "Device" is a battery of a mouse, a keyboard or the like. */
    @Test
    void theBatteryOfAMouseIsNotThatOfTheDevice() throws IOException {
        put("power_supply/hidpp_battery_0/type", "Battery");
        put("power_supply/hidpp_battery_0/scope", "Device");
        put("power_supply/hidpp_battery_0/capacity", "7");
        put("power_supply/hidpp_battery_0/status", "Discharging");
        LiveSensors.Snapshot now = read();
        assertTrue(now.batteryPercent().isEmpty() && now.plugged().isEmpty(), now::toString);
    }

    /** Nothing on line says little: some devices name no such source. Only a battery that is being discharged says that there is none. */
    @Test
    void whereThePowerComesFromIsSaidOnlyWhereItIsKnown() throws IOException {
        put("power_supply/AC/type", "Mains");
        put("power_supply/AC/online", "0");
        assertEquals(Optional.empty(), read().plugged());
        put("power_supply/BAT0/type", "Battery");
        put("power_supply/BAT0/status", "Discharging");
        assertEquals(Optional.of(false), read().plugged());
        put("power_supply/AC/online", "1");
        assertEquals(Optional.of(true), read().plugged());
    }

    @Test
    void aReadingNamesItsSensor() throws IOException {
        put("hwmon/hwmon3/name", "k10temp");
        put("hwmon/hwmon3/temp1_input", "71000");
        put("hwmon/hwmon3/temp1_label", "Tctl");
        put("hwmon/hwmon3/temp3_input", "64000");
        assertEquals(Optional.of(new SensorReading(71, "k10temp Tctl")), read().die());
    }
}
