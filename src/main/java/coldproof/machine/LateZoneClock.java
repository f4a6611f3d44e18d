package coldproof.machine;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;

/**
 * The system's clock, its zone looked up when it is first asked for: the table of zones and the search for further tables take a sixth of the time
 * to open a study, which seldom needs a zone.
 */
final class LateZoneClock extends Clock {
    private final Clock instants = Clock.systemUTC();
    private ZoneId zone;

    @Override
    public synchronized ZoneId getZone() {
        if (zone == null) {
            zone = ZoneId.systemDefault();
        }
        return zone;
    }

    @Override
    public Clock withZone(ZoneId other) {
        return instants.withZone(other);
    }

    @Override
    public Instant instant() {
        return instants.instant();
    }
}
