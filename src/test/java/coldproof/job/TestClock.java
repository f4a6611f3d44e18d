package coldproof.job;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Locale;

/** A clock that only moves when told, and a machine that lives by it. */
final class TestClock extends Clock {
    private Instant now;
    private long nanos;
    private int marks;

    TestClock(String start) {
        now = Instant.parse(start);
    }

    /** Lets time go by. */
    void pass(Duration time) {
        now = now.plus(time);
        nanos += time.toNanos();
    }

    /** Sets the wall clock. */
    void set(Instant instant) {
        now = instant;
    }

    Machine machine() {
        return new Machine(this, () -> nanos, () -> String.format(Locale.ROOT, "%012x", ++marks), Path.of(""));
    }

    @Override
    public ZoneId getZone() {
        return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
        return this;
    }

    @Override
    public Instant instant() {
        return now;
    }
}
