package coldproof.study;

import coldproof.quantity.Counted;
import java.util.List;
import java.util.Locale;

/** Looks at the clocks of neighbouring entries: set back, ran ahead, other zone, gap in the sequence. */
final class ClockWatch {
    /** s; the clocks are read a moment apart, and time synchronisation slews the wall clock: less than this is no oddity. */
    private static final double TOLERANCE_SECONDS = 2;
    private final List<Oddity> oddities;
    private Entry previous;

    ClockWatch(List<Oddity> oddities) {
        this.oddities = oddities;
    }

    void next(Entry entry) {
        if (previous != null) {
            compare(previous, entry);
        }
        previous = entry;
    }

    private void compare(Entry before, Entry after) {
        long missing = after.sequence() - before.sequence() - 1;
        if (missing != 0) {
            odd(Oddity.Kind.ENTRIES_MISSING, after, missing > 0
                    ? Counted.of(missing, "entry is", "entries are") + " missing before entry " + after.sequence()
                    : "entry " + after.sequence() + " comes after entry " + before.sequence());
        }
        double wall = Elapsed.wallSeconds(before, after);
        double measured = 0;
        boolean sameProcess = before.process().equals(after.process());
        if (sameProcess) {
            measured = after.monotonicSeconds() - before.monotonicSeconds();
            if (measured < 0) {
                odd(Oddity.Kind.MONOTONIC_WENT_BACK, after, "the monotonic clock went back by " + seconds(-measured) + " before entry "
                        + after.sequence());
                measured = 0;
            }
        }
        if (wall < measured - TOLERANCE_SECONDS) {
            odd(Oddity.Kind.CLOCK_SET_BACK, after, "the clock was set back by " + seconds(measured - wall) + " before entry "
                    + after.sequence() + "; the order is that of the entries");
        } else if (sameProcess && wall > measured + TOLERANCE_SECONDS) {
            odd(Oddity.Kind.CLOCK_RAN_AHEAD, after, "the clock ran ahead by " + seconds(wall - measured) + " before entry "
                    + after.sequence() + ": it was set forward, or the computer slept");
        }
        if (!before.at().getOffset().equals(after.at().getOffset())) {
            odd(Oddity.Kind.ZONE_CHANGED, after, "the offset from UTC changed from " + before.at().getOffset() + " to "
                    + after.at().getOffset() + " before entry " + after.sequence()
                    + (sameProcess ? ": daylight saving, or the zone was set" : ": daylight saving, or another computer"));
        }
    }

    private void odd(Oddity.Kind kind, Entry entry, String text) {
        oddities.add(new Oddity(kind, entry.sequence(), text));
    }

    private static String seconds(double seconds) {
        return seconds < 120 ? String.format(Locale.ROOT, "%.1f s", seconds) : String.format(Locale.ROOT, "%.0f min", seconds / 60);
    }
}
