package coldproof.machine.sensors;

import coldproof.trace.Channel;
import java.nio.file.Path;
import java.util.OptionalLong;

/**
 * Power out of a battery, from its own figure or from current and voltage: the power of the device while it has no other source. What goes into
 * a battery is not. Many drivers give the size of a current only, so the direction is the battery's status.
 */
record BatteryPower(String heading, Path folder) implements Sensor {
    private static final double MICRO = 1e6;

    static boolean isThere(Path folder) {
        return KernelFile.number(folder.resolve("power_now")).isPresent()
                || KernelFile.number(folder.resolve("current_now")).isPresent() && KernelFile.number(folder.resolve("voltage_now")).isPresent();
    }

    @Override
    public Channel channel() {
        return Channel.SYSTEM_POWER;
    }

    @Override
    public double read(double seconds) {
        String status = KernelFile.text(folder.resolve("status"));
        if (!status.isEmpty() && !status.equals("Discharging")) {
            return Double.NaN;
        }
        OptionalLong power = KernelFile.number(folder.resolve("power_now"));
        if (power.isPresent()) {
            return Math.abs(power.getAsLong()) / MICRO;
        }
        OptionalLong current = KernelFile.number(folder.resolve("current_now"));
        OptionalLong voltage = KernelFile.number(folder.resolve("voltage_now"));
        return current.isPresent() && voltage.isPresent() ? Math.abs(current.getAsLong()) / MICRO * voltage.getAsLong() / MICRO : Double.NaN;
    }

    /** On the wall, or full, a battery gives no power. */
    @Override
    public boolean mayBeSilent() {
        return true;
    }
}
