package coldproof.files.table;

import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import coldproof.trace.RowSink;
import java.io.IOException;
import java.io.InterruptedIOException;
import java.util.function.LongConsumer;
import java.util.stream.IntStream;

/**
 * Reads a log with several hands. Each takes the next block, finds its numbers while others do the same with theirs, waits until all blocks
 * before it are told, and tells its own: the sink hears every row in the order of the file, from one thread at a time, whatever the number
 * of hands, and what is kept is one block a hand.
 */
final class LogScan {
    private final LogBlocks blocks;
    private final LogHead head;
    private final int[] wanted;
    private final RowSink sink;
    private final LongConsumer bytesRead;
    private final Object turn = new Object();
    private long taken; // blocks; guarded by blocks
    private long told; // blocks; guarded by turn, as is all below
    private long line;
    private Throwable failure; // the first

    /**
     * Prepares to read.
     *
     * @param blocks the lines from the first line of data on
     * @param wanted which columns of the file to read, first is 0; the first of them is the time
     * @param bytesRead told the number of bytes taken so far, once a block
     */
    LogScan(LogBlocks blocks, LogHead head, int[] wanted, RowSink sink, LongConsumer bytesRead) {
        this.blocks = blocks;
        this.head = head;
        this.wanted = wanted.clone();
        this.sink = sink;
        this.bytesRead = bytesRead;
        line = head.firstDataLine();
    }

    /** Reads to the end. What goes wrong in any hand ends all, and comes out when they have ended. */
    void run(int hands) throws IOException {
        IntStream.range(0, hands).parallel().forEach(hand -> work());
        if (failure instanceof IOException failed) {
            throw failed;
        } else if (failure instanceof RuntimeException failed) {
            throw failed;
        } else if (failure instanceof Error failed) {
            throw failed;
        }
    }

    private void work() {
        LogBlock block = LogBlocks.empty();
        LogRows rows = new LogRows(wanted.length);
        LogScanner scanner = new LogScanner(head, wanted, rows);
        try {
            long number = take(block);
            while (number >= 0) {
                scanner.scan(block);
                number = tell(number, block, rows) ? take(block) : -1;
            }
        } catch (IOException | RuntimeException | Error failed) {
            stop(failed); // else the others would wait for this hand's block
        }
    }

    private long take(LogBlock block) throws IOException {
        synchronized (blocks) {
            return blocks.next(block) ? taken++ : -1;
        }
    }

    /** Tells a block in its turn; false when a hand has failed, so that there is no turn. */
    private boolean tell(long number, LogBlock block, LogRows rows) throws IOException {
        synchronized (turn) {
            while (told < number && failure == null) {
                await();
            }
            if (failure != null) {
                return false;
            }
            if (block.endless) {
                throw new Refused(Problem.of("line " + line + " is longer than " + (LogBlocks.LONGEST_LINE >> 20) + " MB",
                        Place.of(head.name(), (int) line, 0), "a text with line ends", "Check that this is a log written as delimited text."));
            }
            rows.tell(line, sink);
            line += rows.lineCount();
            told++;
            bytesRead.accept(block.read);
            turn.notifyAll();
            return true;
        }
    }

    private void await() throws IOException {
        try {
            turn.wait();
        } catch (InterruptedException interrupted) {
            throw (IOException) new InterruptedIOException("reading was interrupted").initCause(interrupted);
        }
    }

    private void stop(Throwable failed) {
        synchronized (turn) {
            failure = failure == null ? failed : failure;
            turn.notifyAll();
        }
    }
}
