package coldproof.face.cli;

import java.util.function.IntConsumer;
import java.util.function.LongSupplier;

/** Tells on the channel for messages how many of so many things are done, once a second from the first second on; says nothing of quick work. */
final class CountProgress implements IntConsumer {
    private static final long EVERY_NANOS = 1_000_000_000L;

    private final Streams streams;
    private final LongSupplier monotonicNanos;
    private final int total;
    private final String what;
    private long next;
    private boolean shown;

    /** Progress through so many things. */
    CountProgress(Streams streams, LongSupplier monotonicNanos, int total, String what) {
        this.streams = streams;
        this.monotonicNanos = monotonicNanos;
        this.total = total;
        this.what = what;
        next = monotonicNanos.getAsLong() + EVERY_NANOS;
    }

    @Override
    public void accept(int done) {
        long now = monotonicNanos.getAsLong();
        if (now - next < 0) {
            return;
        }
        next = now + EVERY_NANOS;
        String text = "read " + done + " of " + total + " " + what;
        streams.err().print(streams.interactive() ? "\r" + text : text + "\n");
        streams.err().flush();
        shown = true;
    }

    /** Ends the line that was written over and over. */
    void done() {
        if (shown && streams.interactive()) {
            streams.err().println();
            streams.err().flush();
        }
    }
}
