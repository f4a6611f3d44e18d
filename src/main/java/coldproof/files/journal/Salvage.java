package coldproof.files.journal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Restores damaged lines where a checksum proves what stood there; anything less than a proof is left as damaged.
 *
 * <p>A line break that became another byte joins two lines, of which each still has its own sum. A byte that became a line break cuts a
 * line in two: one of the 255 other bytes between the pieces makes the sum right. In the last bytes of a line everything but the digits has
 * a known place; and a sum that agrees with the bytes in all but one of its 16 digits is the sum that is damaged, not the bytes (a chance
 * agreement has a probability below 1e-15).
 */
final class Salvage {
    private final byte[] bytes;
    private final Sum sums;
    private final List<Restored> restored = new ArrayList<>();
    private final List<Span> lost = new ArrayList<>();

    /**
     * A line put right.
     *
     * @param span where the damage is
     * @param bytes the line as it was written, without line feed
     * @param text what was wrong
     */
    record Restored(Span span, byte[] bytes, String text) {}

    /** Looks at neighbouring lines that are all damaged. */
    Salvage(byte[] bytes, List<Span> run, Sum sums) {
        this.bytes = bytes;
        this.sums = sums;
        int i = 0;
        while (i < run.size()) {
            if (i + 1 < run.size() && wasCutInTwo(run.get(i), run.get(i + 1))) {
                i += 2;
            } else {
                alone(run.get(i));
                i++;
            }
        }
    }

    private boolean wasCutInTwo(Span first, Span second) {
        if (!Line.hasTail(bytes, second.from(), second.to()) && second.length() > Line.TAIL) {
            return false;
        }
        byte[] whole = Arrays.copyOfRange(bytes, first.from(), second.to());
        int gap = first.to() - first.from();
        if (gap + 1 != second.from() - first.from()) {
            return false; // a carriage return was dropped between the two: more than one byte
        }
        for (int candidate = 0; candidate < 256; candidate++) {
            whole[gap] = (byte) candidate;
            if (candidate != '\n' && Line.isIntact(whole, 0, whole.length, sums)) {
                restored.add(new Restored(first, whole, "a byte had become a line break after " + gap + " bytes; its checksum proves it"));
                return true;
            }
        }
        return false;
    }

    private void alone(Span span) {
        int from = span.from();
        int joined = 0;
        for (int end = from + Line.TAIL; end < span.to(); end++) {
            if (bytes[end - 1] == '}' && bytes[end - 2] == '"' && Line.isIntact(bytes, from, end, sums)) {
                restored.add(new Restored(span, Arrays.copyOfRange(bytes, from, end), "a line break after it had become another byte"));
                joined++;
                from = end + 1;
                end = from + Line.TAIL - 1;
            }
        }
        if (from >= span.to()) {
            return;
        }
        Span rest = new Span(span.number(), from, span.to());
        if (joined > 0 && Line.isIntact(bytes, rest.from(), rest.to(), sums)) {
            restored.add(new Restored(span, Arrays.copyOfRange(bytes, rest.from(), rest.to()),
                    "a line break before it had become another byte"));
        } else if (!tailPutRight(rest)) {
            lost.add(rest);
        }
    }

    private boolean tailPutRight(Span span) {
        if (span.length() <= Line.TAIL) {
            return false;
        }
        byte[] line = Arrays.copyOfRange(bytes, span.from(), span.to());
        int covered = line.length - Line.TAIL;
        long right = sums.of(line, 0, covered);
        byte[] tail = Line.tail(right);
        int different = 0;
        for (int i = 0; i < tail.length; i++) {
            different += line[covered + i] == tail[i] ? 0 : 1;
        }
        if (different != 1) {
            return false;
        }
        System.arraycopy(tail, 0, line, covered, tail.length);
        restored.add(new Restored(span, line, "one byte of its checksum field was wrong; the rest proves it"));
        return Line.isIntact(line, 0, line.length, sums);
    }

    List<Restored> restored() {
        return restored;
    }

    List<Span> lost() {
        return lost;
    }
}
