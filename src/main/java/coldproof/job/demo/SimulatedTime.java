package coldproof.job.demo;

import coldproof.job.Machine;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.SplittableRandom;

/** A clock that moves only when told to, so that a demonstration of days takes a second and always writes the same bytes. */
final class SimulatedTime extends Clock {
    private static final long MARK_MASK = (1L << 48) - 1; // twelve hexadecimal digits
    private final ZoneId zone;
    private Instant now;

    SimulatedTime(ZonedDateTime start) {
        zone = start.getZone();
        now = start.toInstant();
    }

    void passSeconds(double seconds) {
        now = now.plusNanos(Math.round(seconds * 1e9));
    }

    /** Goes to a time of day: today if it is still to come, else tomorrow. */
    void passUntil(int hour, int minute) {
        ZonedDateTime local = now.atZone(zone);
        ZonedDateTime wanted = local.withHour(hour).withMinute(minute).withSecond(0).withNano(0);
        now = (wanted.isBefore(local) ? wanted.plusDays(1) : wanted).toInstant();
    }

    /** A machine that lives by this clock; its marks are drawn from the seed. */
    Machine machine(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        Instant start = now;
        return new Machine(this, () -> Duration.between(start, now).toNanos(), () -> String.format("%012x", random.nextLong() & MARK_MASK), Path.of(""));
    }

    @Override
    public ZoneId getZone() {
        return zone;
    }

    @Override
    public Clock withZone(ZoneId other) {
        return new SimulatedTime(now.atZone(other));
    }

    @Override
    public Instant instant() {
        return now;
    }
}
