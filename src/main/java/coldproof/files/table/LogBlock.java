package coldproof.files.table;

import java.util.Arrays;

/** A stretch of whole lines of a log. Behind the last one stand more line ends, so that eight bytes may be read at once from any place. */
final class LogBlock {
    private static final int PADDING = 16;

    byte[] bytes;
    /** Where the first line begins. */
    int from;
    /** Place behind the last line end. */
    int to;
    /** How many bytes of the log were read when it was filled. */
    long read;
    /** Whether this is no block, but the beginning of a line of unreasonable length. */
    boolean endless;

    /** Whether its last line had no line end in the log, as one has that was cut off while it was written. */
    boolean unfinished;

    LogBlock(int room) {
        bytes = new byte[room + PADDING];
    }

    /** Bytes that find place. */
    int room() {
        return bytes.length - PADDING;
    }

    /** Makes sure that so many bytes find place; keeps what is there. */
    void makeRoom(int wanted) {
        if (room() < wanted) {
            bytes = Arrays.copyOf(bytes, wanted + PADDING);
        }
    }

    /** Ends the block behind its last line. */
    void close(int end, long bytesRead) {
        from = 0;
        to = end;
        read = bytesRead;
        Arrays.fill(bytes, end, Math.min(end + PADDING, bytes.length), (byte) '\n');
    }

    boolean isEmpty() {
        return from == to;
    }

    /** Leaves out the first line. */
    void skipLine() {
        from = Math.min(to, behindLineEnd(bytes, endOfLine(bytes, from)));
    }

    /** Where the line end is that ends the line of a place. */
    static int endOfLine(byte[] bytes, int at) {
        int p = at;
        while (bytes[p] != '\n' && bytes[p] != '\r') {
            p++;
        }
        return p;
    }

    /** Where the next line begins. */
    static int behindLineEnd(byte[] bytes, int end) {
        return bytes[end] == '\r' && bytes[end + 1] == '\n' ? end + 2 : end + 1;
    }
}
