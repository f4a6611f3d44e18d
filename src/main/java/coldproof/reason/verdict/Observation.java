package coldproof.reason.verdict;

import java.util.ArrayList;
import java.util.List;

/**
 * One trial as the verdict sees it.
 *
 * @param level level of the compared factor
 * @param session label of its session; empty when trials have none
 * @param order place in the run order (of the session, or of the study); NaN when not known
 * @param pair label of its pair; empty when not paired
 * @param adjust levels of the factors to adjust for, in a fixed order
 * @param covariates numbers to adjust for by a straight line, in a fixed order
 * @param score the metric, above 0
 */
public record Observation(String level, String session, double order, String pair, List<String> adjust, List<Double> covariates, double score) {
    /** Refuses a score without a logarithm. */
    public Observation {
        if (!(score > 0 && score < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("a score must be above 0 and finite, not " + score);
        }
        adjust = List.copyOf(adjust);
        covariates = List.copyOf(covariates);
    }

    /** Without covariates. */
    public Observation(String level, String session, double order, String pair, List<String> adjust, double score) {
        this(level, session, order, pair, adjust, List.of(), score);
    }

    /** The same trial with one more covariate. */
    public Observation withCovariate(double value) {
        List<Double> more = new ArrayList<>(covariates);
        more.add(value);
        return new Observation(level, session, order, pair, adjust, more, score);
    }

    /** The same trial with another score. */
    public Observation withScore(double other) {
        return new Observation(level, session, order, pair, adjust, covariates, other);
    }
}
