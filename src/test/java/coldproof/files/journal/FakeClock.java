package coldproof.files.journal;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;

/** A wall clock and a monotonic clock that move only when told; the wall clock can jump back and change its zone. */
final class FakeClock extends Clock {
    private Instant instant = Instant.parse("2026-01-14T08:30:00Z");
    private ZoneId zone = ZoneOffset.ofHours(1);
    private long nanos = 5_000_000_000L;
    private int marks;

    /** Both clocks run on. */
    void pass(Duration time) {
        instant = instant.plus(time);
        nanos += time.toNanos();
    }

    /** Somebody sets the wall clock; the monotonic one does not notice. */
    void set(Duration by) {
        instant = instant.plus(by);
    }

    void moveTo(ZoneId other) {
        zone = other;
    }

    JournalClock journalClock() {
        return new JournalClock(this, () -> nanos, () -> "mark" + ++marks);
    }

    @Override
    public ZoneId getZone() {
        return zone;
    }

    @Override
    public Clock withZone(ZoneId other) {
        throw new UnsupportedOperationException("a test moves the clock with moveTo");
    }

    @Override
    public Instant instant() {
        return instant;
    }
}
