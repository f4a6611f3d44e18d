package coldproof.study;

import java.time.OffsetDateTime;

/**
 * An event with its envelope: the order it happened in, and when.
 *
 * <p>Order is that of {@code sequence}, never of the clock. Durations come from {@code monotonicSeconds} as long as {@code process} is the
 * same; see {@link Elapsed}.
 *
 * @param sequence first is 1
 * @param at wall-clock time with the offset from UTC that held where it was written
 * @param monotonicSeconds seconds since the writing process opened the journal, by a clock that is never set; 0 or more
 * @param process a mark drawn afresh each time a process opens the journal; monotonic offsets compare within one mark only
 * @param event what happened
 */
public record Entry(long sequence, OffsetDateTime at, double monotonicSeconds, String process, Event event) {
    /** Refuses a sequence below 1, a negative or undefined offset and an empty mark. */
    public Entry {
        Values.atLeast("sequence", sequence, 1);
        Values.present("at", at);
        Values.notNegative("monotonicSeconds", monotonicSeconds);
        Values.word("process", process);
        Values.present("event", event);
    }
}
