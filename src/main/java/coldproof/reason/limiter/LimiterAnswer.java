package coldproof.reason.limiter;

import coldproof.trace.Channel;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What holds the device back under each condition, and why.
 *
 * @param conditions one for each condition, in the order of their first trial
 * @param predictions what the hypotheses predicted about every change that was made, and what became of it
 * @param ruledOut what is ruled out, and by what
 * @param next the experiment that would tell most
 * @param remarks what weakens the answer
 */
public record LimiterAnswer(List<OfCondition> conditions, List<Prediction> predictions, List<String> ruledOut, String next, List<String> remarks) {
    /** Copies its lists. */
    public LimiterAnswer {
        conditions = List.copyOf(conditions);
        predictions = List.copyOf(predictions);
        ruledOut = List.copyOf(ruledOut);
        remarks = List.copyOf(remarks);
    }

    /** The same answer with one more remark. */
    public LimiterAnswer with(String remark) {
        List<String> more = new ArrayList<>(remarks);
        more.add(remark);
        return new LimiterAnswer(conditions, predictions, ruledOut, next, more);
    }

    /**
     * The answer for one condition.
     *
     * @param levels level of every factor
     * @param limiter what holds the device
     * @param confidence probability of that answer under the judged likelihoods, in [0, 1]; of the likeliest one where unclear
     * @param probabilities the same for every hypothesis
     * @param trials trials with a trace
     * @param boostSeconds length of the boost of a soaked trial; NaN when not known
     * @param coldBoostSeconds length of the boost of trials that begin a session; NaN when there is none
     * @param sustained levels over the last half of the soaked trials
     * @param kelvinsPerWatt die-to-air resistance; NaN when not known
     * @param heatShare share of the last half in which heat held the device; NaN where only one limit is in play
     * @param powerShare share of the last half in which the power limit did; NaN likewise
     * @param evidence findings, the weightiest first
     * @param headroom at which air the limiter would change; empty when that cannot be told
     */
    public record OfCondition(Map<String, String> levels, Limiter limiter, double confidence, Map<Hypothesis, Double> probabilities, int trials,
            double boostSeconds, double coldBoostSeconds, Map<Channel, Double> sustained, double kelvinsPerWatt, double heatShare, double powerShare,
            List<String> evidence, Optional<Headroom> headroom) {
        /** Copies, keeping orders. */
        public OfCondition {
            levels = Collections.unmodifiableMap(new LinkedHashMap<>(levels));
            Map<Hypothesis, Double> weights = new EnumMap<>(Hypothesis.class);
            weights.putAll(probabilities);
            probabilities = Collections.unmodifiableMap(weights);
            Map<Channel, Double> means = new EnumMap<>(Channel.class);
            means.putAll(sustained);
            sustained = Collections.unmodifiableMap(means);
            evidence = List.copyOf(evidence);
        }
    }
}
