package coldproof.stats;

import static org.junit.jupiter.api.Assertions.fail;

/** Comparison by relative error, with the offending input in the message. */
public final class Close {
    private Close() {}

    /** Fails unless {@code actual} lies within {@code relative} times {@code expected} of it; an expected 0 must be met exactly. */
    public static void relative(double expected, double actual, double relative, Object where) {
        if (!(Math.abs(actual - expected) <= relative * Math.abs(expected))) {
            fail(where + ": expected " + expected + " but was " + actual + ", relative error "
                    + Math.abs(actual - expected) / Math.abs(expected) + " above " + relative);
        }
    }
}
