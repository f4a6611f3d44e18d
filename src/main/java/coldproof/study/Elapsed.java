package coldproof.study;

import java.util.List;

/**
 * Time between two entries.
 *
 * <p>Within one process it is the difference of the monotonic offsets, which no setting of the clock, daylight saving or change of zone can
 * touch. Across processes only the wall clocks are left; a difference that comes out negative is counted as 0.
 *
 * @param seconds 0 or more
 * @param measured true if the monotonic clock measured all of it; false if part of it is a difference of wall-clock times
 */
public record Elapsed(double seconds, boolean measured) {
    private static final double NANOS_PER_SECOND = 1e9;

    /** Refuses a negative or undefined time. */
    public Elapsed {
        Values.notNegative("seconds", seconds);
    }

    /** From one entry to a later one. */
    public static Elapsed between(Entry from, Entry to) {
        if (from.process().equals(to.process())) {
            return new Elapsed(Math.max(0, to.monotonicSeconds() - from.monotonicSeconds()), true);
        }
        return new Elapsed(Math.max(0, wallSeconds(from, to)), false);
    }

    /** From the first of these entries to the last, step by step, so that one change of process spoils only its own step. */
    public static Elapsed along(List<Entry> entries) {
        double seconds = 0;
        boolean measured = true;
        for (int i = 1; i < entries.size(); i++) {
            Elapsed step = between(entries.get(i - 1), entries.get(i));
            seconds += step.seconds;
            measured &= step.measured;
        }
        return new Elapsed(seconds, measured);
    }

    /** Difference of the wall-clock instants, s; negative when the clock was set back. */
    static double wallSeconds(Entry from, Entry to) {
        long seconds = to.at().toEpochSecond() - from.at().toEpochSecond();
        int nanos = to.at().getNano() - from.at().getNano();
        return nanos < 0 ? seconds - 1 + (nanos + NANOS_PER_SECOND) / NANOS_PER_SECOND : seconds + nanos / NANOS_PER_SECOND;
    }
}
