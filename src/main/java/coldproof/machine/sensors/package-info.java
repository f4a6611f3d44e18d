/**
 * Sensors of the machine at hand, through the interfaces the Linux kernel documents: hwmon, thermal zones, power_supply, cpufreq, powercap
 * and /proc/stat. Enter at {@link coldproof.machine.sensors.MachineSensors}. Reads only, never writes to a kernel file; what cannot be
 * read is said, never made up. Other systems have none of these files, and are told so. May use {@code quantity} and {@code trace}.
 */
package coldproof.machine.sensors;
