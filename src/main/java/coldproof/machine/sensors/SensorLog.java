package coldproof.machine.sensors;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Writes what the sensors say into a file, usually once a second, on a thread of its own, until it is closed. */
public final class SensorLog implements AutoCloseable {
    private final List<LogColumn> columns;
    private final List<String> missing;
    private final Path file;
    private final BufferedWriter out;
    private final Thread thread;
    private final long began = System.nanoTime();
    private final long everyNanos;
    private final Object pause = new Object();
    private volatile boolean stopped;
    private boolean finished;
    private volatile IOException failure;
    private volatile int rows;
    private long busyNanos;

    private SensorLog(FoundSensors found, Path file, double everySeconds) throws IOException {
        this.columns = found.sensors().stream().map(LogColumn::new).toList();
        this.missing = found.missing();
        this.everyNanos = Math.round(everySeconds * 1e9);
        this.file = file;
        out = Files.newBufferedWriter(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
        StringBuilder heading = new StringBuilder("time [s]");
        columns.forEach(column -> heading.append(',').append(column.heading().replace(',', ' ').replace('"', ' ')));
        out.write(heading.append('\n').toString());
        thread = new Thread(this::sample, "sensors");
        thread.setDaemon(true);
    }

    /**
     * What a log came to.
     *
     * @param rows rows written
     * @param columns headings of the sensors that gave any value
     * @param missing what is not there, gave nothing or fell silent, a sentence each
     * @param costShare share of the time it lasted that was spent reading and writing, in [0, 1]: at most so much of one processor, since
     *     waiting for a processor or a drive is in it
     */
    public record Report(int rows, List<String> columns, List<String> missing, double costShare) {
        /** Copies. */
        public Report {
            columns = List.copyOf(columns);
            missing = List.copyOf(missing);
        }
    }

    static SensorLog start(FoundSensors sensors, Path file, double everySeconds) throws IOException {
        SensorLog log = new SensorLog(sensors, file, everySeconds);
        log.thread.start();
        return log;
    }

    private void sample() {
        long next = began;
        while (!stopped && failure == null) {
            row();
            next = Math.max(next + everyNanos, System.nanoTime()); // late is late: no two rows in a hurry
            sleepUntil(next);
        }
    }

    /** Waits on a monitor: an interrupt would close the file that is being written. */
    private void sleepUntil(long nanos) {
        synchronized (pause) {
            for (long left = nanos - System.nanoTime(); left > 0 && !stopped; left = nanos - System.nanoTime()) {
                try {
                    pause.wait(Math.max(1, left / 1_000_000));
                } catch (InterruptedException foreign) {
                    stopped = true; // nobody here interrupts this thread: whoever does wants it to end
                }
            }
        }
    }

    private synchronized void row() {
        long from = System.nanoTime();
        double seconds = (from - began) / 1e9;
        StringBuilder cells = new StringBuilder();
        for (LogColumn column : columns) {
            cells.append(',').append(column.cell(seconds));
        }
        if (cells.length() > columns.size()) { // a row in which nothing was read, as the first one where all takes two readings, is none
            write(String.format(Locale.ROOT, "%.3f", seconds) + cells + '\n');
        }
        busyNanos += System.nanoTime() - from;
    }

    private void write(String line) {
        try {
            out.write(line);
            out.flush();
            rows++;
        } catch (IOException full) {
            failure = full;
        }
    }

    /**
     * Takes a last row and ends the log, without the columns in which nothing was ever read.
     *
     * @throws IOException if a row could not be written, then or before
     */
    public Report finish() throws IOException {
        if (!finished) {
            finished = true;
            synchronized (pause) {
                stopped = true;
                pause.notifyAll();
            }
            try {
                thread.join(2000);
            } catch (InterruptedException hurried) {
                Thread.currentThread().interrupt();
            }
            row();
            out.close();
            EmptyColumns.remove(file, columns.stream().map(LogColumn::gave).toList());
        }
        if (failure != null) {
            throw failure;
        }
        List<String> headings = columns.stream().filter(LogColumn::gave).map(LogColumn::heading).toList();
        List<String> sentences = new ArrayList<>(missing);
        columns.forEach(column -> column.remark().ifPresent(sentences::add));
        return new Report(rows, headings, sentences, busyNanos / (double) Math.max(1, System.nanoTime() - began));
    }

    @Override
    public void close() throws IOException {
        finish();
    }
}
