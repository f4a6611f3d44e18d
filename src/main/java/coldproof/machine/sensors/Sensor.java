package coldproof.machine.sensors;

import coldproof.trace.Channel;
import java.util.Optional;

/** Something that can be read once a second. Not thread-safe. */
interface Sensor {
    /** Heading of its column, with the unit in brackets. */
    String heading();

    /** What it measures. */
    Channel channel();

    /**
     * Reads it.
     *
     * @param seconds by a clock that is never set, for those that need the time between two readings
     * @return the value in the unit of the heading; NaN where it cannot be read now, or not before the second reading
     */
    double read(double seconds);

    /** Whether it is no news when it gives nothing. */
    default boolean mayBeSilent() {
        return false;
    }

    /** What to tell of it once its log has ended, in a sentence without a full stop; empty where there is nothing to tell. */
    default Optional<String> remark() {
        return Optional.empty();
    }
}
