package coldproof.machine.sensors;

import coldproof.trace.Channel;
import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;

/** Writes what the sensors say into a file, once a second, on a thread of its own, until it is closed. */
public final class SensorLog implements AutoCloseable {
    private static final long EVERY_NANOS = 1_000_000_000L;

    private final List<Sensor> sensors;
    private final List<String> missing;
    private final BufferedWriter out;
    private final Thread thread;
    private final long began = System.nanoTime();
    private final Map<Channel, Double> latest = new EnumMap<>(Channel.class);
    private final Object pause = new Object();
    private volatile boolean stopped;
    private boolean finished;
    private volatile IOException failure;
    private volatile int rows;
    private long busyNanos;

    private SensorLog(LinuxSensors sensors, Path file) throws IOException {
        this.sensors = sensors.found();
        this.missing = sensors.missing();
        out = Files.newBufferedWriter(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
        StringBuilder heading = new StringBuilder("time [s]");
        this.sensors.forEach(sensor -> heading.append(',').append(sensor.heading().replace(',', ' ').replace('"', ' ')));
        out.write(heading.append('\n').toString());
        thread = new Thread(this::sample, "sensors");
        thread.setDaemon(true);
    }

    /**
     * What a log came to.
     *
     * @param rows rows written
     * @param columns headings of the sensors
     * @param missing what is not there, a sentence each
     * @param costShare share of one processor that reading and writing took, by the time it lasted
     */
    public record Report(int rows, List<String> columns, List<String> missing, double costShare) {
        /** Copies. */
        public Report {
            columns = List.copyOf(columns);
            missing = List.copyOf(missing);
        }
    }

    /**
     * Begins a log of the machine at hand.
     *
     * @param file a new file
     * @throws IOException if it cannot be made
     */
    public static SensorLog start(Path file) throws IOException {
        return start(Path.of("/"), file);
    }

    /** Begins a log of the sensors below another root; for tests. */
    static SensorLog start(Path root, Path file) throws IOException {
        SensorLog log = new SensorLog(new LinuxSensors(root).find(), file);
        log.thread.start();
        return log;
    }

    /** Whether any sensor was found. */
    public boolean hasSensors() {
        return !sensors.isEmpty();
    }

    /** The last reading of a channel, of several sensors the highest; empty when there is none. */
    public OptionalDouble latest(Channel channel) {
        synchronized (latest) {
            Double value = latest.get(channel);
            return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
        }
    }

    private void sample() {
        long next = began;
        while (!stopped && failure == null) {
            row();
            next = Math.max(next + EVERY_NANOS, System.nanoTime()); // late is late: no two rows in a hurry
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
        StringBuilder line = new StringBuilder(String.format(Locale.ROOT, "%.3f", seconds));
        Map<Channel, Double> now = new EnumMap<>(Channel.class);
        for (Sensor sensor : sensors) {
            double value = sensor.read(seconds);
            line.append(',');
            if (!Double.isNaN(value)) {
                line.append(number(value));
                now.merge(sensor.channel(), value, Math::max);
            }
        }
        synchronized (latest) {
            latest.clear();
            latest.putAll(now);
        }
        try {
            out.write(line.append('\n').toString());
            out.flush();
            rows++;
        } catch (IOException full) {
            failure = full;
        }
        busyNanos += System.nanoTime() - from;
    }

    private static String number(double value) {
        return value == Math.rint(value) ? Long.toString((long) value) : String.format(Locale.ROOT, "%.3f", value);
    }

    /**
     * Takes a last row and ends the log.
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
        }
        if (failure != null) {
            throw failure;
        }
        List<String> columns = new ArrayList<>(sensors.stream().map(Sensor::heading).toList());
        return new Report(rows, columns, missing, busyNanos / (double) Math.max(1, System.nanoTime() - began));
    }

    @Override
    public void close() throws IOException {
        finish();
    }

    @Override
    public String toString() {
        return Arrays.toString(sensors.stream().map(Sensor::heading).toArray());
    }
}
