package coldproof.machine.sensors;

import coldproof.trace.Channel;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/**
 * The sensors of a machine, looked for once: what is watched while a trial runs and what its log holds are the same readings. One for each
 * trial, since the sensors of the log remember their last reading.
 *
 * <p>The kernel's documented files come first. What they do not give is asked of the library of system information, as far as that measures it
 * on this system ({@link HostSystem}); where the kernel gives all, the library is not loaded.
 */
public final class MachineSensors {
    private static final double EVERY_SECONDS = 1;
    private static final List<Channel> TELLING = List.of(Channel.DIE_TEMPERATURE, Channel.PACKAGE_POWER, Channel.CLOCK, Channel.FAN);

    private final FoundSensors found;
    private final double everySeconds;

    /**
     * Looks for sensors in the kernel's files alone.
     *
     * @param root folder that holds {@code sys} and {@code proc}
     * @param everySeconds time between two rows of a log, above 0
     */
    public MachineSensors(Path root, double everySeconds) {
        this(new LinuxSensors(root).find(), HostSystem.LINUX, everySeconds);
    }

    private MachineSensors(FoundSensors found, HostSystem system, double everySeconds) {
        this.found = new FoundSensors(found.sensors(), withLacking(found, system), found.power());
        this.everySeconds = everySeconds;
    }

    /** The sensors of this machine, logged once a second. */
    public static MachineSensors atHand() {
        return atHand(EnumSet.allOf(Channel.class));
    }

    /** The same where only these channels matter, so that the library is not loaded for others. */
    static MachineSensors atHand(Set<Channel> channels) {
        return of(Path.of("/"), HostSystem.named(System.getProperty("os.name", "")), channels, LibraryLoader::open, EVERY_SECONDS);
    }

    /** The sensors of a machine with these files and this library. */
    static MachineSensors of(Path root, HostSystem system, Set<Channel> channels, LibraryDoor door, double everySeconds) {
        FoundSensors kernel = new LinuxSensors(root).find();
        Set<Channel> wanted = system.measured();
        wanted.retainAll(channels);
        wanted.removeAll(kernel.channels());
        return new MachineSensors(wanted.isEmpty() ? kernel : kernel.and(ofLibrary(door, wanted)), system, everySeconds);
    }

    private static FoundSensors ofLibrary(LibraryDoor door, Set<Channel> wanted) {
        try {
            return new LibrarySensors(door.open(), wanted).find();
        } catch (LibraryUnavailable unavailable) {
            String sentence = "the library that asks the system cannot be used here (" + unavailable.getMessage() + ")";
            return new FoundSensors(List.of(), List.of(sentence), PowerState.UNKNOWN);
        }
    }

    /** Of the channels that tell what holds a machine back, those that nothing here measures, in one sentence. */
    private static List<String> withLacking(FoundSensors found, HostSystem system) {
        List<String> lacking = TELLING.stream().filter(channel -> !found.channels().contains(channel)).map(Channel::label).toList();
        List<String> missing = new ArrayList<>(found.missing());
        if (!lacking.isEmpty()) {
            missing.add("nothing here measures " + String.join(", ", lacking) + " (" + system.looked() + ")");
        }
        return missing;
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
