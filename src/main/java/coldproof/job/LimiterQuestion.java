package coldproof.job;

import coldproof.plan.Better;
import coldproof.reason.limiter.KnownLimits;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * A question for the limiter about a table of trials made elsewhere.
 *
 * @param file the table
 * @param traceColumn column that names the log of each trial, relative to the folder of the table
 * @param factors columns that make the condition, one or more
 * @param metric column of the score; empty: the only one that looks like a score, if there is one
 * @param better which way of it is good
 * @param session column of the session; empty: one called so, if there is one
 * @param order column of the run order; empty likewise
 * @param mappings which column of the logs is which channel, each {@code channel=column}
 * @param limits limits the maker states
 */
public record LimiterQuestion(Path file, String traceColumn, List<String> factors, Optional<String> metric, Better better, Optional<String> session,
        Optional<String> order, List<String> mappings, KnownLimits limits) {
    /** Copies its lists. */
    public LimiterQuestion {
        factors = List.copyOf(factors);
        mappings = List.copyOf(mappings);
    }
}
