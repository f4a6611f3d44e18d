package coldproof.files.journal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/** First pass: cuts a file into lines, has {@link LineWork} read those that are intact, and {@link Salvage} look at runs of lines that are not. */
final class LineScan {
    private static final byte[] BYTE_ORDER_MARK = {(byte) 0xef, (byte) 0xbb, (byte) 0xbf};
    private final byte[] bytes;
    private final LineReader reader;
    private final Sum sums = new Sum();
    private final List<Found> found = new ArrayList<>();
    private final List<Damage> damages = new ArrayList<>();
    private final List<Span> unreadable = new ArrayList<>();
    private final List<Span> run = new ArrayList<>();
    private Optional<Span> tornTail = Optional.empty();
    private boolean lastLineBreakMissing;
    private boolean otherLineEnds;

    LineScan(byte[] bytes, Supplier<LineReader> readers) {
        this.bytes = bytes;
        this.reader = readers.get();
        List<Span> spans = cut(skipByteOrderMark());
        LineWork work = new LineWork(bytes, spans, readers);
        for (int i = 0; i < spans.size(); i++) {
            if (endsWithLineFeed(spans.get(i))) {
                line(spans.get(i), work, i);
            } else {
                tail(spans.get(i), work, i);
            }
        }
        endRun();
    }

    /** The lines without their ends; what follows the last line feed is one too. */
    private List<Span> cut(int start) {
        List<Span> spans = new ArrayList<>();
        int from = start;
        for (int i = start; i < bytes.length; i++) {
            if (bytes[i] == '\n') {
                boolean otherEnd = i > from && bytes[i - 1] == '\r';
                spans.add(new Span(spans.size() + 1, from, otherEnd ? i - 1 : i));
                from = i + 1;
            }
        }
        if (from < bytes.length) {
            spans.add(new Span(spans.size() + 1, from, bytes.length));
        }
        return spans;
    }

    private boolean endsWithLineFeed(Span span) {
        return span.to() < bytes.length;
    }

    private int skipByteOrderMark() {
        for (int i = 0; i < BYTE_ORDER_MARK.length; i++) {
            if (bytes.length <= i || bytes[i] != BYTE_ORDER_MARK[i]) {
                return 0;
            }
        }
        damages.add(new Damage(1, 0, Damage.Kind.REWRITTEN, "a byte order mark stands before the first entry", 0));
        return BYTE_ORDER_MARK.length;
    }

    private void line(Span span, LineWork work, int i) {
        if (bytes[span.to()] == '\r' && !otherLineEnds) {
            damages.add(new Damage(span.number(), span.from(), Damage.Kind.REWRITTEN,
                    "this line and perhaps others end with carriage return and line feed", 0));
            otherLineEnds = true;
        }
        if (span.length() == 0) {
            damages.add(new Damage(span.number(), span.from(), Damage.Kind.REWRITTEN, "the line is empty", 0));
        } else if (work.isIntact(i)) {
            endRun();
            read(span, work, i);
        } else {
            run.add(span);
        }
    }

    private void read(Span span, LineWork work, int i) {
        try {
            Line line = work.line(i);
            found.add(new Found(span.number(), span.from(), line, bytes, span));
            if (!line.notUnderstood().isEmpty()) {
                damages.add(new Damage(span.number(), span.from(), Damage.Kind.NOT_UNDERSTOOD,
                        "no byte is wrong, but the content is not understood: " + line.notUnderstood(), 0));
            }
        } catch (IllegalArgumentException e) {
            unreadable.add(span);
            damages.add(new Damage(span.number(), span.from(), Damage.Kind.NOT_UNDERSTOOD,
                    "no byte is wrong, but it is no entry: " + e.getMessage(), 1));
        }
    }

    private void tail(Span span, LineWork work, int i) {
        if (work.isIntact(i)) {
            endRun();
            read(span, work, i);
            lastLineBreakMissing = true;
            damages.add(new Damage(span.number(), span.from(), Damage.Kind.LINE_BREAK_MISSING,
                    "the last entry is whole, but its line break is missing", 0));
            return;
        }
        run.add(span);
        tornTail = Optional.of(span);
    }

    /** Settles the run of damaged lines, if there is one. */
    private void endRun() {
        if (run.isEmpty()) {
            return;
        }
        Salvage salvage = new Salvage(bytes, run, sums);
        for (Salvage.Restored restored : salvage.restored()) {
            damages.add(new Damage(restored.span().number(), restored.span().from(), Damage.Kind.LINE_RESTORED, restored.text(), 0));
            readRestored(restored);
        }
        for (Span lost : salvage.lost()) {
            boolean torn = tornTail.isPresent() && lost.to() == bytes.length;
            damages.add(new Damage(lost.number(), lost.from(), torn ? Damage.Kind.TORN_TAIL : Damage.Kind.LINE_DAMAGED,
                    torn ? "the last line is cut short after " + lost.length() + " bytes; it was never acknowledged"
                            : "the checksum does not fit its bytes: it was changed or overwritten", torn ? 0 : 1));
            unreadable.add(lost);
        }
        tornTail = tornTail.filter(salvage.lost()::contains);
        run.clear();
    }

    private void readRestored(Salvage.Restored restored) {
        try {
            Line line = reader.read(restored.bytes(), 0, restored.bytes().length);
            Span whole = new Span(restored.span().number(), 0, restored.bytes().length);
            found.add(new Found(restored.span().number(), restored.span().from(), line, restored.bytes(), whole));
        } catch (IllegalArgumentException e) {
            damages.add(new Damage(restored.span().number(), restored.span().from(), Damage.Kind.NOT_UNDERSTOOD, e.getMessage(), 1));
        }
    }

    List<Found> found() {
        return found;
    }

    List<Damage> damages() {
        return damages;
    }

    /** Lines whose entry could not be read, in the order of the file. */
    List<Span> unreadable() {
        return unreadable;
    }

    /** What is left of a last line that was cut short. */
    Optional<Span> tornTail() {
        return tornTail;
    }

    boolean lastLineBreakMissing() {
        return lastLineBreakMissing;
    }

    /** Turns the bytes of an intact line into its entry; a seam, so that a test of a million damages need not parse a billion lines. */
    interface LineReader {
        /** The line in these bytes; {@code IllegalArgumentException} when it is no entry. */
        Line read(byte[] bytes, int from, int to);
    }
}
