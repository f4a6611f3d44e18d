package coldproof.machine.sensors;

import coldproof.trace.Channel;
import java.nio.file.Path;
import java.util.OptionalLong;

/** Power of a battery, in or out, from its own figure or from current and voltage. Many drivers give the size of a current only. */
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
        OptionalLong power = KernelFile.number(folder.resolve("power_now"));
        if (power.isPresent()) {
            return Math.abs(power.getAsLong()) / MICRO;
        }
        OptionalLong current = KernelFile.number(folder.resolve("current_now"));
        OptionalLong voltage = KernelFile.number(folder.resolve("voltage_now"));
        return current.isPresent() && voltage.isPresent() ? Math.abs(current.getAsLong()) / MICRO * voltage.getAsLong() / MICRO : Double.NaN;
    }
}
