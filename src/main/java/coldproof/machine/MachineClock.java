package coldproof.machine;

import java.time.Clock;
import java.util.SplittableRandom;
import java.util.function.LongSupplier;
import java.util.function.Supplier;

/** The clocks of this computer, and marks that tell processes and studies apart. */
public final class MachineClock {
    private static final int MARK_DIGITS = 12;

    private MachineClock() {}

    /** Wall clock in the zone of this computer, which is looked up when it is first asked for. */
    public static Clock wall() {
        return new LateZoneClock();
    }

    /** A clock that is never set, ns from any origin; it may stand still while the computer sleeps. */
    public static LongSupplier monotonicNanos() {
        return new Ticks();
    }

    /**
     * Marks of 12 lower-case hexadecimal digits. They need not be secret, only distinct, so they grow from the time to the nanosecond and
     * the process number, which spares the start-up time of a cryptographic generator.
     */
    public static Supplier<String> marks() {
        return new Marks();
    }

    /** By name: the first lambda of a program takes four milliseconds, and this stands at its beginning. */
    private static final class Ticks implements LongSupplier {
        @Override
        public long getAsLong() {
            return System.nanoTime();
        }
    }

    /** Draws marks; the number of this process is asked for when the first is drawn. */
    private static final class Marks implements Supplier<String> {
        private SplittableRandom random;

        @Override
        public synchronized String get() {
            if (random == null) {
                random = new SplittableRandom(System.nanoTime() ^ System.currentTimeMillis() << 20 ^ ProcessHandle.current().pid() << 44);
            }
            StringBuilder mark = new StringBuilder(MARK_DIGITS);
            for (int i = 0; i < MARK_DIGITS; i++) {
                mark.append(Character.forDigit(random.nextInt(16), 16));
            }
            return mark.toString();
        }
    }
}
