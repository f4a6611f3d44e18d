package coldproof.files.journal;

import java.util.Arrays;

/**
 * A line that was read, and where.
 *
 * @param number line of the file, first is 1
 * @param from where it starts, bytes from the start of the file
 * @param line what it says
 * @param source bytes that hold its text, the file's or, when it was restored, its own
 * @param text where in them it stands
 */
record Found(int number, int from, Line line, byte[] source, Span text) {
    long sequence() {
        return line.entry().sequence();
    }

    /** The line as it was written, without line feed. */
    byte[] bytes() {
        return Arrays.copyOfRange(source, text.from(), text.to());
    }
}
