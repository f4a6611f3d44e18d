package coldproof.plan;

import java.util.List;
import java.util.Optional;

/**
 * Everything that was decided before the first trial. Consistent by construction: the reader reports contradictions, this type refuses them.
 *
 * @param title the question in a sentence
 * @param device what is tested
 * @param metric what is measured
 * @param compare the question
 * @param mattersPercent the smallest change worth having, percent, above 0
 * @param claim what is to be shown
 * @param factors all factors, in order
 * @param noise the noise planned with, where known
 * @param errors the accepted rates of wrong answers
 * @param looks how often the data are judged: 1 is once at the end
 * @param layout the arrangement
 * @param budget costs in time
 * @param start start conditions
 * @param abort limits that end a trial
 * @param workload what a trial runs
 * @param seed drives the run order
 */
public record Plan(String title, String device, Metric metric, Comparison compare, double mattersPercent, Claim claim, List<Factor> factors,
        Optional<NoiseAssumption> noise, Errors errors, int looks, Layout layout, Budget budget, StartConditions start, AbortLimits abort,
        Workload workload, long seed) {
    /** Refuses what contradicts itself. */
    public Plan {
        factors = List.copyOf(factors);
        if (!(mattersPercent > 0 && mattersPercent < 1000)) {
            throw new IllegalArgumentException("matters " + mattersPercent + " % is outside (0, 1000) %");
        }
        if (Factor.named(compare.factor(), factors).isEmpty()) {
            throw new IllegalArgumentException("the compared factor " + compare.factor() + " is not among the factors");
        }
    }

    /** The factor of the question. */
    public Factor comparedFactor() {
        return factor(compare.factor());
    }

    /**
     * The factor with this name.
     *
     * @throws IllegalArgumentException if there is none
     */
    public Factor factor(String name) {
        Optional<Factor> factor = Factor.named(name, factors);
        if (factor.isEmpty()) {
            throw new IllegalArgumentException("no factor is called " + name);
        }
        return factor.get();
    }

    /** The factor that is set once a session and has several levels, if there is one. */
    public Optional<Factor> sessionFactor() {
        return Factor.ofSessions(factors);
    }

    /** Whether the compared factor is set once a session. */
    public boolean comparesSessions() {
        return comparedFactor().change() == Change.PER_SESSION;
    }

    /** The same plan laid out otherwise. */
    public Plan with(Layout other) {
        return with(other, looks);
    }

    /** The same plan laid out otherwise and judged at so many looks, the last at the end. */
    public Plan with(Layout other, int otherLooks) {
        return new Plan(title, device, metric, compare, mattersPercent, claim, factors, noise, errors, otherLooks, other, budget, start, abort, workload, seed);
    }
}
