package coldproof.job;

import coldproof.machine.sensors.MachineSensors;
import coldproof.machine.sensors.SensorLog;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Telemetry of one recorded trial, in {@code traces/trial-001.csv} of the study. A trial is worth more than its telemetry: what goes wrong
 * here is told, and the trial is recorded without a trace.
 */
final class TrialTelemetry {
    private static final int FEWEST_ROWS = 5; // fewer say nothing of a course
    private static final String FOLDER = "traces";

    private final Path folder;
    private final String name;
    private final Optional<SensorLog> log;
    private final Consumer<String> remarks;
    private Optional<RecordedTelemetry> kept = Optional.empty();
    private boolean committed;
    private final List<String> held = new ArrayList<>();

    private TrialTelemetry(Path folder, String name, Optional<SensorLog> log, Consumer<String> remarks) {
        this.folder = folder;
        this.name = name;
        this.log = log;
        this.remarks = remarks;
    }

    static TrialTelemetry start(MachineSensors sensors, Path folder, int trial, Consumer<String> remarks) {
        String name = free(folder, trial);
        try {
            Files.createDirectories(folder.resolve(FOLDER));
            return new TrialTelemetry(folder, name, Optional.of(sensors.log(folder.resolve(name))), remarks);
        } catch (IOException failed) {
            remarks.accept("no telemetry: " + folder.resolve(name) + " cannot be written (" + failed.getMessage() + ")");
            return new TrialTelemetry(folder, name, Optional.empty(), remarks);
        }
    }

    /** A name not taken yet: a trial that was undone and run again keeps both logs. */
    private static String free(Path folder, int trial) {
        String name = String.format(Locale.ROOT, "%s/trial-%03d.csv", FOLDER, trial);
        for (int again = 2; Files.exists(folder.resolve(name)); again++) {
            name = String.format(Locale.ROOT, "%s/trial-%03d-%d.csv", FOLDER, trial, again);
        }
        return name;
    }

    /** The log is to stay: the journal is about to name it. What is to be said of it is said now; of a run that is no trial it would be noise. */
    synchronized void commit() {
        committed = true;
        held.forEach(remarks);
        held.clear();
    }

    /** Ends the log and takes it away, unless it is to stay. From any thread, more than once. */
    synchronized void drop() {
        if (log.isEmpty() || committed) {
            return;
        }
        boolean interrupted = Thread.interrupted(); // the file would be closed under its writer
        try {
            endUnheard(log.get());
            Files.deleteIfExists(folder.resolve(name));
        } catch (IOException failed) {
            remarks.accept("the telemetry of a run that is no trial could not be taken away: " + folder.resolve(name) + " (" + failed.getMessage() + ")");
        } finally {
            interruptAgain(interrupted);
        }
        kept = Optional.empty();
    }

    private static void endUnheard(SensorLog log) {
        try {
            log.finish();
        } catch (IOException unwritten) {
            return; // the file goes anyway, so what is missing in it is of no interest
        }
    }

    private static void interruptAgain(boolean interrupted) {
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
    }

    /** Ends the log; a log too short to say anything is taken away again. */
    synchronized void finish() {
        if (log.isEmpty()) {
            return;
        }
        boolean interrupted = Thread.interrupted(); // as in drop
        try {
            SensorLog.Report report = log.get().finish();
            if (report.columns().isEmpty()) {
                Files.deleteIfExists(folder.resolve(name));
                held.add("no telemetry: no sensor gave a value; " + String.join("; ", report.missing()));
            } else if (report.rows() < FEWEST_ROWS) {
                Files.deleteIfExists(folder.resolve(name));
            } else {
                kept = Optional.of(new RecordedTelemetry(name, report.rows(), report.columns().size(), 100 * report.costShare()));
                report.missing().forEach(sentence -> held.add("telemetry: " + sentence));
            }
        } catch (IOException failed) {
            held.add("telemetry of this trial is incomplete and left aside: " + failed.getMessage());
        } finally {
            interruptAgain(interrupted);
        }
    }

    /** The finished log; empty when there is none worth keeping. */
    Optional<RecordedTelemetry> kept() {
        return kept;
    }
}
