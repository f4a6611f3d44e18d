/**
 * This computer: its clocks and the seeds of chance, its sensors, and the workload it runs. The only room that asks the system for time. Never
 * writes to a device or a setting. May use {@code quantity} and {@code trace}.
 */
package coldproof.machine;
