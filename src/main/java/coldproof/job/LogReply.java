package coldproof.job;

import java.util.List;

/**
 * What came of an answer at the bench.
 *
 * @param said what to tell the person, each a sentence or a few; what it calls recorded is on the medium
 * @param leaves whether the checklist is left now
 */
public record LogReply(List<String> said, boolean leaves) {
    /** Copies. */
    public LogReply {
        said = List.copyOf(said);
    }

    static LogReply of(String... said) {
        return new LogReply(List.of(said), false);
    }

    static LogReply leaving(String... said) {
        return new LogReply(List.of(said), true);
    }
}
