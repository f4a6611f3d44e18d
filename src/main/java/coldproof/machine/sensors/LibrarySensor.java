package coldproof.machine.sensors;

import coldproof.trace.Channel;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/** One answer of the library as a sensor: a call that throws is a missing value, and is told at the end. */
final class LibrarySensor implements Sensor {
    private final String heading;
    private final Channel channel;
    private final SystemLibrary library;
    private final ToDoubleFunction<SystemLibrary> reading;
    private volatile String trouble = "";

    LibrarySensor(String heading, Channel channel, SystemLibrary library, ToDoubleFunction<SystemLibrary> reading) {
        this.heading = heading;
        this.channel = channel;
        this.library = library;
        this.reading = reading;
    }

    @Override
    public String heading() {
        return heading;
    }

    @Override
    public Channel channel() {
        return channel;
    }

    @Override
    public double read(double seconds) {
        try {
            return reading.applyAsDouble(library);
        } catch (RuntimeException | LinkageError failed) {
            trouble = LibraryLoader.firstLine(failed);
            return Double.NaN;
        }
    }

    /** On the wall, or full, a battery gives no power. */
    @Override
    public boolean mayBeSilent() {
        return channel == Channel.SYSTEM_POWER;
    }

    @Override
    public Optional<String> remark() {
        return trouble.isEmpty() ? Optional.empty() : Optional.of("some readings of " + heading + " failed (" + trouble + ")");
    }
}
