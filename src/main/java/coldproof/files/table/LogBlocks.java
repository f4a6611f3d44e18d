package coldproof.files.table;

import java.io.IOException;
import java.io.InputStream;
import java.util.Arrays;

/** Cuts a log into blocks of whole lines. A cell never goes on in the next line, so any line end will do. Not thread-safe. */
final class LogBlocks {
    static final int LONGEST_LINE = 1 << 24;
    private static final int USUAL = 1 << 18; // bytes: with the numbers it holds, a block finds room in the cache beside a processor

    private final InputStream in;
    private byte[] rest = new byte[0];
    private long linesToSkip;
    private long read;
    private boolean ended;

    /**
     * Prepares to read.
     *
     * @param in bytes of the text in UTF-8 or Latin-1, without byte order mark
     * @param linesToSkip how many lines to leave out at the beginning
     */
    LogBlocks(InputStream in, long linesToSkip) {
        this.in = in;
        this.linesToSkip = linesToSkip;
    }

    /** A block to be filled again and again. */
    static LogBlock empty() {
        return new LogBlock(USUAL);
    }

    /** Whether the log was read to its end. */
    boolean ended() {
        return ended;
    }

    /** Takes the next lines; false when there are none. */
    boolean next(LogBlock block) throws IOException {
        do {
            if (ended) {
                return false;
            }
            fill(block);
            skipLines(block);
        } while (block.isEmpty() && !block.endless);
        return true;
    }

    private void fill(LogBlock block) throws IOException {
        block.makeRoom(rest.length + USUAL / 2);
        System.arraycopy(rest, 0, block.bytes, 0, rest.length);
        int filled = read(block, rest.length);
        int end = endOfLines(block.bytes, filled);
        while (end == 0 && !ended && filled < LONGEST_LINE) {
            block.makeRoom(2 * filled);
            filled = read(block, filled);
            end = endOfLines(block.bytes, filled);
        }
        block.endless = end == 0 && !ended;
        block.unfinished = ended && filled > 0 && block.bytes[filled - 1] != '\n' && block.bytes[filled - 1] != '\r';
        if (ended && filled > 0 && block.bytes[filled - 1] != '\n') {
            block.bytes[filled++] = '\n'; // the last line may lack its end
        }
        end = ended ? filled : end;
        rest = Arrays.copyOfRange(block.bytes, end, filled);
        block.close(end, read);
    }

    /** Reads until the block is full or the log ends. */
    private int read(LogBlock block, int from) throws IOException {
        int filled = from;
        while (filled < block.room() && !ended) {
            int got = in.read(block.bytes, filled, block.room() - filled);
            ended = got < 0;
            filled += Math.max(0, got);
            read += Math.max(0, got);
        }
        return filled;
    }

    /** Place behind the last line end; 0 when there is none. A return at the very end may be half of one. */
    private static int endOfLines(byte[] bytes, int length) {
        int end = length;
        while (end > 0 && bytes[end - 1] != '\n') {
            end--;
        }
        if (end > 0) {
            return end;
        }
        end = length - 1;
        while (end > 0 && bytes[end - 1] != '\r') {
            end--;
        }
        return Math.max(0, end);
    }

    private void skipLines(LogBlock block) {
        while (linesToSkip > 0 && !block.isEmpty()) {
            block.skipLine();
            linesToSkip--;
        }
    }
}
