package coldproof.face.cli;

import coldproof.report.text.Figures;
import java.io.PrintWriter;
import java.util.Locale;
import java.util.function.LongConsumer;
import java.util.function.LongSupplier;

/** Tells on the channel for messages how far a long reading is, once a second from the first second on; says nothing of a quick one. */
final class ReadingProgress implements LongConsumer {
    private static final long EVERY_NANOS = 1_000_000_000L;
    private static final int BAR = 24;

    private final Streams streams;
    private final LongSupplier monotonicNanos;
    private final long totalBytes;
    private final long began;
    private long next;
    private boolean shown;

    /** Progress through so many bytes; 0 or less when that is not known. */
    ReadingProgress(Streams streams, LongSupplier monotonicNanos, long totalBytes) {
        this.streams = streams;
        this.monotonicNanos = monotonicNanos;
        this.totalBytes = totalBytes;
        began = monotonicNanos.getAsLong();
        next = began + EVERY_NANOS;
    }

    @Override
    public void accept(long bytesRead) {
        long now = monotonicNanos.getAsLong();
        if (now - next < 0) {
            return;
        }
        next = now + EVERY_NANOS;
        double megabytes = bytesRead / 1e6;
        String rate = Figures.fixed(megabytes / ((now - began) / 1e9), 0) + " MB/s";
        boolean known = totalBytes > 0 && bytesRead <= totalBytes;
        int done = known ? (int) (BAR * bytesRead / totalBytes) : 0;
        String text = known
                ? String.format(Locale.ROOT, "[%s%s] %3d %%  %.0f of %.0f MB, %s", "#".repeat(done), ".".repeat(BAR - done), 100 * bytesRead / totalBytes,
                        megabytes, totalBytes / 1e6, rate)
                : String.format(Locale.ROOT, "%.0f MB read, %s", megabytes, rate);
        PrintWriter err = streams.err();
        err.print(streams.interactive() ? "\r" + text : text + "\n");
        err.flush();
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
