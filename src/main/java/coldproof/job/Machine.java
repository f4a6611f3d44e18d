package coldproof.job;

import coldproof.files.journal.JournalClock;
import coldproof.machine.MachineClock;
import java.nio.file.Path;
import java.time.Clock;
import java.util.function.LongSupplier;
import java.util.function.Supplier;

/**
 * What comes from outside: clocks and marks. Tests hand in their own.
 *
 * @param wall wall clock with its zone
 * @param monotonicNanos a clock that is never set, ns
 * @param marks draws a mark no other process has
 * @param folder where relative names start
 */
public record Machine(Clock wall, LongSupplier monotonicNanos, Supplier<String> marks, Path folder) {
    /** The machine at hand. */
    public static Machine atHand() {
        return new Machine(MachineClock.wall(), MachineClock.monotonicNanos(), MachineClock.marks(), Path.of(""));
    }

    JournalClock journalClock() {
        return new JournalClock(wall, monotonicNanos, marks);
    }
}
