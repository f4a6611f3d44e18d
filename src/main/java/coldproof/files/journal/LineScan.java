package coldproof.files.journal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** First pass: cuts a file into lines, reads those that are intact, and has {@link Salvage} look at runs of lines that are not. */
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

    LineScan(byte[] bytes, LineReader reader) {
        this.bytes = bytes;
        this.reader = reader;
        int from = skipByteOrderMark();
        int number = 1;
        for (int i = from; i < bytes.length; i++) {
            if (bytes[i] == '\n') {
                line(new Span(number++, from, i));
                from = i + 1;
            }
        }
        if (from < bytes.length) {
            tail(new Span(number, from, bytes.length));
        }
        endRun();
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

    private void line(Span raw) {
        Span span = raw;
        if (span.length() > 0 && bytes[span.to() - 1] == '\r') {
            span = new Span(raw.number(), raw.from(), raw.to() - 1);
            if (!otherLineEnds) {
                damages.add(new Damage(raw.number(), raw.from(), Damage.Kind.REWRITTEN,
                        "this line and perhaps others end with carriage return and line feed", 0));
            }
            otherLineEnds = true;
        }
        if (span.length() == 0) {
            damages.add(new Damage(raw.number(), raw.from(), Damage.Kind.REWRITTEN, "the line is empty", 0));
        } else if (Line.isIntact(bytes, span.from(), span.to(), sums)) {
            endRun();
            read(span);
        } else {
            run.add(span);
        }
    }

    private void read(Span span) {
        try {
            Line line = reader.read(bytes, span.from(), span.to());
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

    private void tail(Span span) {
        if (Line.isIntact(bytes, span.from(), span.to(), sums)) {
            endRun();
            read(span);
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
