package coldproof.face.cli;

import coldproof.report.text.Figures;
import java.util.Locale;
import java.util.function.LongConsumer;

/** Tells how far a long reading is. */
final class ReadingProgress implements LongConsumer {
    private static final int BAR = 24;

    private final ProgressLine line;
    private final long totalBytes;

    /** Progress through so many bytes; 0 or less when that is not known. */
    ReadingProgress(ProgressLine line, long totalBytes) {
        this.line = line;
        this.totalBytes = totalBytes;
    }

    @Override
    public void accept(long bytesRead) {
        line.tell(() -> text(bytesRead));
    }

    private String text(long bytesRead) {
        double megabytes = bytesRead / 1e6;
        String rate = Figures.fixed(megabytes / line.seconds(), 0) + " MB/s";
        if (totalBytes <= 0 || bytesRead > totalBytes) {
            return String.format(Locale.ROOT, "%.0f MB read, %s", megabytes, rate);
        }
        int done = (int) (BAR * bytesRead / totalBytes);
        return String.format(Locale.ROOT, "[%s%s] %3d %%  %.0f of %.0f MB, %s", "#".repeat(done), ".".repeat(BAR - done), 100 * bytesRead / totalBytes,
                megabytes, totalBytes / 1e6, rate);
    }
}
