package coldproof.reason.verdict;

import coldproof.stats.model.Estimate;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The test of the change in its stratum.
 *
 * @param estimate of the log change, better is positive
 * @param method in words
 * @param sessionLogSd session-to-session log standard deviation, where it can be told
 * @param runLogSd run-to-run log standard deviation, where it can be told
 * @param carried noise from elsewhere that it was judged by
 */
record Analysis(Estimate estimate, String method, OptionalDouble sessionLogSd, OptionalDouble runLogSd, Optional<CarriedNoise> carried) {
    /** By the noise of the trials themselves. */
    Analysis(Estimate estimate, String method, OptionalDouble sessionLogSd, OptionalDouble runLogSd) {
        this(estimate, method, sessionLogSd, runLogSd, Optional.empty());
    }
}
