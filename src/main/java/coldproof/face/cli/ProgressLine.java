package coldproof.face.cli;

import java.util.function.LongSupplier;
import java.util.function.Supplier;

/** How far long work is: told once a second from the first second on, so that quick work says nothing. */
final class ProgressLine implements AutoCloseable {
    private static final long EVERY_NANOS = 1_000_000_000L;

    private final LiveLine line;
    private final LongSupplier monotonicNanos;
    private final long began;
    private long next;

    /** A line for work that begins now. */
    ProgressLine(Streams streams, LongSupplier monotonicNanos) {
        line = new LiveLine(streams);
        this.monotonicNanos = monotonicNanos;
        began = monotonicNanos.getAsLong();
        next = began + EVERY_NANOS;
    }

    /** Tells where a second has gone by since the last time. */
    void tell(Supplier<String> text) {
        long now = monotonicNanos.getAsLong();
        if (now - next >= 0) {
            next = now + EVERY_NANOS;
            line.show(text.get());
        }
    }

    /** Seconds since the work began. */
    double seconds() {
        return (monotonicNanos.getAsLong() - began) / 1e9;
    }

    @Override
    public void close() {
        line.end();
    }
}
