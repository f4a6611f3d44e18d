package coldproof.quantity;

import java.util.List;

/**
 * One mistake of the person, as data: worded once, shown the same on every face.
 *
 * @param what what is wrong, quoting what was read
 * @param where the place
 * @param expected what would have been right, empty when the remedy says it
 * @param nearest valid words close to what was read, best first
 * @param remedy what to do now, never blank
 */
public record Problem(String what, Place where, String expected, List<String> nearest, String remedy) {
    /** Refuses a problem that leaves the person without a way out. */
    public Problem {
        if (remedy.isBlank()) {
            throw new IllegalArgumentException("a problem without a remedy: " + what);
        }
        nearest = List.copyOf(nearest);
    }

    /** A problem with no near words. */
    public static Problem of(String what, Place where, String expected, String remedy) {
        return new Problem(what, where, expected, List.of(), remedy);
    }
}
