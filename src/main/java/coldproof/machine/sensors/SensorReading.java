package coldproof.machine.sensors;

/**
 * A value that a sensor shows.
 *
 * @param amount in the unit of its channel
 * @param sensor which, in a few words
 */
public record SensorReading(double amount, String sensor) {}
