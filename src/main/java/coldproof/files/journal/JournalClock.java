package coldproof.files.journal;

import java.time.Clock;
import java.util.function.LongSupplier;
import java.util.function.Supplier;

/**
 * The clocks and marks a journal writes with.
 *
 * @param wall wall clock and zone of this computer
 * @param monotonicNanos a clock that is never set, ns from any origin
 * @param marks draws a new mark at each call: lower-case hexadecimal, distinct for all practical purposes
 */
public record JournalClock(Clock wall, LongSupplier monotonicNanos, Supplier<String> marks) {}
