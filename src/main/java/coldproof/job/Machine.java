package coldproof.job;

import coldproof.files.journal.JournalClock;
import coldproof.machine.MachineClock;
import java.nio.file.Path;
import java.time.Clock;
import java.util.function.LongSupplier;
import java.util.function.Supplier;

/**
 * What comes from outside: clocks, marks and sensors. Tests hand in their own.
 *
 * @param wall wall clock with its zone
 * @param monotonicNanos a clock that is never set, ns
 * @param marks draws a mark no other process has
 * @param folder where relative names start
 * @param sensors what shows the conditions a trial starts from
 */
public record Machine(Clock wall, LongSupplier monotonicNanos, Supplier<String> marks, Path folder, StartSensors sensors) {
    /** One without sensors. */
    public Machine(Clock wall, LongSupplier monotonicNanos, Supplier<String> marks, Path folder) {
        this(wall, monotonicNanos, marks, folder, StartSensors.NONE);
    }

    /** The machine at hand, its sensors left alone. */
    public static Machine atHand() {
        return new Machine(MachineClock.wall(), MachineClock.monotonicNanos(), MachineClock.marks(), Path.of(""));
    }

    /** The machine at hand where it is the device that is tested: its sensors are asked too. */
    public static Machine underTest() {
        return atHand().with(StartSensors.atHand());
    }

    Machine with(StartSensors others) {
        return new Machine(wall, monotonicNanos, marks, folder, others);
    }

    JournalClock journalClock() {
        return new JournalClock(wall, monotonicNanos, marks);
    }
}
