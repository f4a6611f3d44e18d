package coldproof.machine.sensors;

import java.io.IOException;
import java.nio.file.Path;

/**
 * The sensors of a machine, looked for once: what is watched while a trial runs and what its log holds are the same readings. One for each
 * trial, since the sensors of the log remember their last reading.
 */
public final class MachineSensors {
    private static final double EVERY_SECONDS = 1;

    private final LinuxSensors found;
    private final double everySeconds;

    /**
     * Looks for sensors.
     *
     * @param root folder that holds {@code sys} and {@code proc}
     * @param everySeconds time between two rows of a log, above 0
     */
    public MachineSensors(Path root, double everySeconds) {
        found = new LinuxSensors(root).find();
        this.everySeconds = everySeconds;
    }

    /** The sensors of this machine, logged once a second. */
    public static MachineSensors atHand() {
        return new MachineSensors(Path.of("/"), EVERY_SECONDS);
    }

    /** What the abort limits are about, to be read at any time and from any thread. */
    public LiveSensors live() {
        return new LiveSensors(found);
    }

    /**
     * Begins a log of all sensors.
     *
     * @param file a new file
     * @throws IOException if it cannot be made
     */
    public SensorLog log(Path file) throws IOException {
        return SensorLog.start(found, file, everySeconds);
    }
}
