/**
 * This computer: its clocks and the seeds of chance, and later its sensors and the workload it runs. The only room that asks the system for
 * time. May use {@code quantity} and {@code trace}.
 */
package coldproof.machine;
