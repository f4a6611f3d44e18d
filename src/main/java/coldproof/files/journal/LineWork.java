package coldproof.files.journal;

import coldproof.files.Meanwhile;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;

/**
 * Checks the sum of every line and reads those that are intact. A line's sum covers the sum before it only as digits, so each line is checked
 * by itself: in a long journal by several threads, one stretch of lines after the other.
 */
final class LineWork {
    private static final int LONG_JOURNAL = 1 << 18; // bytes; below, starting a thread takes longer than it saves
    private static final int MOST_THREADS = 4; // the rest of opening is the work of one
    private static final int STRETCH = 128; // lines
    private final byte[] bytes;
    private final List<Span> spans;
    private final Supplier<LineScan.LineReader> readers;
    private final boolean[] intact;
    private final Line[] lines;
    private final String[] refusals;
    private final AtomicInteger done = new AtomicInteger();

    LineWork(byte[] bytes, List<Span> spans, Supplier<LineScan.LineReader> readers) {
        this.bytes = bytes;
        this.spans = spans;
        this.readers = readers;
        intact = new boolean[spans.size()];
        lines = new Line[spans.size()];
        refusals = new String[spans.size()];
        List<Meanwhile<Boolean>> others = new ArrayList<>();
        int threads = bytes.length < LONG_JOURNAL ? 1 : Math.min(MOST_THREADS, Runtime.getRuntime().availableProcessors());
        for (int i = 1; i < threads; i++) {
            others.add(Meanwhile.of("journal lines", this::work));
        }
        work();
        for (Meanwhile<Boolean> other : others) {
            other.get(); // what breaks the work of another breaks the reading, as in this one
        }
    }

    /** Takes stretch after stretch until there are no more; true then. */
    private boolean work() {
        Sum sums = new Sum();
        LineScan.LineReader reader = readers.get();
        for (int from = done.getAndAdd(STRETCH); from < spans.size(); from = done.getAndAdd(STRETCH)) {
            for (int i = from; i < Math.min(from + STRETCH, spans.size()); i++) {
                one(i, sums, reader);
            }
        }
        return true;
    }

    private void one(int i, Sum sums, LineScan.LineReader reader) {
        Span span = spans.get(i);
        intact[i] = Line.isIntact(bytes, span.from(), span.to(), sums);
        if (intact[i]) {
            try {
                lines[i] = reader.read(bytes, span.from(), span.to());
            } catch (IllegalArgumentException noEntry) {
                refusals[i] = noEntry.getMessage();
            }
        }
    }

    boolean isIntact(int i) {
        return intact[i];
    }

    /** The entry of an intact line; {@code IllegalArgumentException} when it is none. */
    Line line(int i) {
        if (lines[i] == null) {
            throw new IllegalArgumentException(refusals[i]);
        }
        return lines[i];
    }
}
