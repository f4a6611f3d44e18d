package coldproof.job;

import coldproof.reason.checklist.Ask;
import coldproof.study.Observed;
import java.util.Optional;

/**
 * What Enter alone answers at the bench: what a sensor shows, else what the plan takes for granted. What was shown last is what Enter takes, and
 * it is looked at anew only now and then: a screen is drawn many times a second. Not thread-safe.
 */
final class Offers {
    /** Answer to a reading that was not read though a sensor shows something. */
    static final String NOT_READ = "-";

    private static final long STALE_NANOS = 2_000_000_000L;

    private final Machine machine;
    private final BenchStudy study;
    private Optional<Ask> lookedFor = Optional.empty();
    private long lookedNanos;
    private Optional<Observed> shown = Optional.empty();

    Offers(Machine machine, BenchStudy study) {
        this.machine = machine;
        this.study = study;
    }

    /** The next look is a new one. */
    void forget() {
        lookedFor = Optional.empty();
    }

    /** What a sensor shows of it. */
    Optional<Observed> shown(Ask ask) {
        long now = machine.monotonicNanos().getAsLong();
        if (!lookedFor.equals(Optional.of(ask)) || now - lookedNanos > STALE_NANOS) {
            shown = machine.sensors().shown(ask);
            lookedFor = Optional.of(ask);
            lookedNanos = now;
        }
        return shown;
    }

    /** What Enter alone answers, as it would be typed; empty where it says that it was not read. */
    String usual(Ask ask) {
        return byEnter(ask).map(Offers::typed).orElse("");
    }

    /** The reading that Enter alone gives. Air is only shown: whether the sensor hangs in that air is for the person to say. */
    Optional<Observed> byEnter(Ask ask) {
        Optional<Observed> last = ask == Ask.AIR ? Optional.empty() : lookedFor.equals(Optional.of(ask)) ? shown : shown(ask);
        return last.isPresent() || ask != Ask.POWER ? last : study.view().plan().start().powerSource().map(Observed::of);
    }

    private static String typed(Observed reading) {
        if (reading.amount().isEmpty()) {
            return reading.word();
        }
        String text = Double.toString(reading.amount().getAsDouble());
        return text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
    }
}
