package coldproof.reason.rehearse;

import coldproof.reason.rehearse.bench.BenchParameters;
import java.util.Optional;
import java.util.SplittableRandom;

/**
 * How a rehearsal is done.
 *
 * @param studies simulated for each story, 1 or more
 * @param seed the same seed gives the same studies on every machine
 * @param own a simulated bench that behaves like the study's own, told as a story beside the invented ones
 */
public record RehearsalSettings(int studies, long seed, Optional<BenchParameters> own) {
    private static final long GOLDEN = 0x9E3779B97F4A7C15L; // 2^64 over the golden ratio: spreads neighbouring numbers

    /** Refuses no study at all. */
    public RehearsalSettings {
        if (studies < 1) {
            throw new IllegalArgumentException("studies " + studies + " must be 1 or more");
        }
    }

    /** Without a bench of the study's own. */
    public RehearsalSettings(int studies, long seed) {
        this(studies, seed, Optional.empty());
    }

    /** The stream of one study: its own, whichever thread asks for it. */
    SplittableRandom stream(int study) {
        return new SplittableRandom(mixed(mixed(seed + GOLDEN) + GOLDEN * (study + 1L)));
    }

    /** Finaliser of a 64-bit hash (Stafford's variant 13, from memory): neighbouring studies get unrelated seeds. */
    private static long mixed(long value) {
        long z = (value ^ value >>> 30) * 0xBF58476D1CE4E5B9L;
        z = (z ^ z >>> 27) * 0x94D049BB133111EBL;
        return z ^ z >>> 31;
    }
}
