package coldproof.machine.sensors;

import coldproof.trace.Channel;
import java.nio.file.Path;
import java.util.OptionalLong;

/**
 * A kernel file with one whole number in some small unit.
 *
 * @param heading of the column
 * @param channel what it measures
 * @param file where it is read
 * @param perUnit how many of the file's units make one of the heading's
 */
record ScaledSensor(String heading, Channel channel, Path file, double perUnit) implements Sensor {
    @Override
    public double read(double seconds) {
        OptionalLong raw = KernelFile.number(file);
        return raw.isPresent() ? raw.getAsLong() / perUnit : Double.NaN;
    }
}
