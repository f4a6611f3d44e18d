/**
 * Sensors of the machine at hand. First through the interfaces the Linux kernel documents: hwmon, thermal zones, power_supply, cpufreq,
 * powercap and /proc/stat; what these do not give, through a general-purpose library of system information behind
 * {@link coldproof.machine.sensors.SystemLibrary}, which is loaded only then. Enter at {@link coldproof.machine.sensors.MachineSensors}. Reads
 * only, never writes to a kernel file; what cannot be read or cannot be true is said, never made up. May use {@code quantity} and {@code trace}.
 */
package coldproof.machine.sensors;
