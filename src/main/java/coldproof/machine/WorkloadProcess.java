package coldproof.machine;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;

/** Runs a workload as a child process and times it. */
public final class WorkloadProcess {
    private static final int KEPT_BYTES = 1 << 20;
    private static final double WATCH_SECONDS = 2;
    private static final long SAME_KEY_MILLIS = 100; // Ctrl-C reaches workload and program at once; the workload may be the first to end of it

    private WorkloadProcess() {}

    /**
     * How a run ended.
     *
     * @param exitCode of the program; -1 when it was stopped
     * @param elapsedSeconds from just before the start to the end, by the monotonic clock
     * @param output the last mebibyte of what it wrote to both its outputs
     * @param timedOut whether it was stopped because it took too long
     * @param stopped why it was stopped by the one who watched; empty where it was not
     */
    public record Run(int exitCode, double elapsedSeconds, String output, boolean timedOut, Optional<String> stopped) {}

    /**
     * Runs the command to its end. Both outputs are read, so that a talkative program cannot block; its input is empty.
     *
     * @param command program and arguments; no shell reads them
     * @param folder where it runs
     * @param atMostSeconds stopped, with its children, after this time
     * @param watch asked every two seconds; a reason stops the program with its children
     * @throws IOException if the program cannot be started
     * @throws InterruptedException if interrupted, or told to end as a whole; the program is stopped first
     */
    public static Run run(List<String> command, Path folder, double atMostSeconds, Supplier<Optional<String>> watch) throws IOException, InterruptedException {
        ProcessBuilder builder = new ProcessBuilder(command).directory(folder.toFile()).redirectErrorStream(true);
        long start = System.nanoTime();
        Process process = builder.start();
        process.getOutputStream().close();
        Tail tail = new Tail(process.getInputStream());
        Thread reader = new Thread(tail, "workload output");
        reader.setDaemon(true);
        reader.start();
        boolean ended = false;
        double elapsed;
        Optional<String> stopped = Optional.empty();
        try (Ending ending = Ending.watched(() -> stopForGood(process))) {
            double left = atMostSeconds;
            while (!ended && left > 0 && stopped.isEmpty()) {
                ended = process.waitFor((long) (1000 * Math.min(left, WATCH_SECONDS)), TimeUnit.MILLISECONDS);
                left = atMostSeconds - (System.nanoTime() - start) / 1e9;
                stopped = ended ? stopped : watch.get();
            }
            elapsed = (System.nanoTime() - start) / 1e9;
            Thread.sleep(SAME_KEY_MILLIS);
            if (ending.begun()) {
                throw new InterruptedException("the program ends");
            }
        } finally {
            if (!ended) {
                stop(process);
            }
        }
        reader.join(2000);
        return new Run(ended ? process.exitValue() : -1, elapsed, tail.text(), !ended && stopped.isEmpty(), stopped);
    }

    /** Stops it, and leaves whoever waits for it the time to say so before the program is gone. */
    private static void stopForGood(Process process) {
        stop(process);
        try {
            Thread.sleep(4 * SAME_KEY_MILLIS);
        } catch (InterruptedException hurried) {
            Thread.currentThread().interrupt();
        }
    }

    private static void stop(Process process) {
        process.descendants().forEach(ProcessHandle::destroyForcibly);
        process.destroyForcibly();
    }

    /** Keeps the end of a stream. */
    private static final class Tail implements Runnable {
        private final InputStream in;
        private final byte[] kept = new byte[KEPT_BYTES];
        private long total;

        Tail(InputStream in) {
            this.in = in;
        }

        @Override
        public void run() {
            byte[] chunk = new byte[8192];
            try {
                for (int read = in.read(chunk); read >= 0; read = in.read(chunk)) {
                    add(chunk, read);
                }
            } catch (IOException closed) {
                add("\n(its output ended early)\n".getBytes(StandardCharsets.UTF_8), "\n(its output ended early)\n".length());
            }
        }

        private synchronized void add(byte[] chunk, int count) {
            for (int i = 0; i < count; i++) {
                kept[(int) (total++ % KEPT_BYTES)] = chunk[i];
            }
        }

        synchronized String text() {
            int length = (int) Math.min(total, KEPT_BYTES);
            byte[] ordered = new byte[length];
            for (int i = 0; i < length; i++) {
                ordered[i] = kept[(int) ((total - length + i) % KEPT_BYTES)];
            }
            return new String(ordered, StandardCharsets.UTF_8);
        }
    }
}
