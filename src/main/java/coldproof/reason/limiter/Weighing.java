package coldproof.reason.limiter;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** Weighs the evidence for one condition; findings are taken as independent given the hypothesis. */
final class Weighing {
    /** A prediction that is ruled out makes its hypothesis this much less likely; no more than two count, since they hang together. */
    private static final double RULED_OUT = 0.1;
    private static final int MOST_COUNTED = 2;

    /**
     * Weight of the workload before any finding, against 1 for each other: testers choose loads that keep the device busy (common practice). The
     * middle of the range in which rehearsed studies name a supply and a workload alike well; outside it the findings no longer reach.
     */
    private static final double WORKLOAD_AT_FIRST = 0.28;
    /** The same where nothing was seen of the work, neither how busy it kept the processor nor whether its rate went with the clock. */
    private static final double UNSEEN_WORKLOAD = 0.45;

    private Weighing() {}

    static Map<Hypothesis, Double> probabilities(List<Evidence> evidence, List<Prediction> predictions) {
        Map<Hypothesis, Double> weights = new EnumMap<>(Hypothesis.class);
        double total = 0;
        for (Hypothesis hypothesis : Hypothesis.values()) {
            double weight = hypothesis == Hypothesis.WORKLOAD ? workload(evidence) : product(evidence, hypothesis);
            long out = predictions.stream().filter(prediction -> prediction.hypothesis() == hypothesis && !prediction.quantity().equals(Quantity.FAN.word())
                    && prediction.result() == Prediction.Result.RULED_OUT).count();
            weight *= Math.pow(RULED_OUT, Math.min(MOST_COUNTED, out));
            weights.put(hypothesis, weight);
            total += weight;
        }
        double sum = total;
        weights.replaceAll((hypothesis, weight) -> weight / sum);
        return weights;
    }

    private static double product(List<Evidence> evidence, Hypothesis hypothesis) {
        return evidence.stream().mapToDouble(one -> one.under(hypothesis)).reduce(1, (a, b) -> a * b);
    }

    /**
     * Where the work itself limits, something still holds the clock, each of the four as likely as another: what is pinned looks as it does
     * under that one. What was seen of the work is weighed as it is.
     */
    private static double workload(List<Evidence> evidence) {
        List<Evidence> ofTheWork = evidence.stream().filter(Evidence::ofTheWork).toList();
        List<Evidence> ofTheClock = evidence.stream().filter(one -> !one.ofTheWork()).toList();
        double held = Stream.of(Hypothesis.values()).filter(hypothesis -> hypothesis != Hypothesis.WORKLOAD)
                .mapToDouble(hypothesis -> product(ofTheClock, hypothesis)).average().orElseThrow();
        return (ofTheWork.isEmpty() ? UNSEEN_WORKLOAD : WORKLOAD_AT_FIRST) * held * product(ofTheWork, Hypothesis.WORKLOAD);
    }

    static Hypothesis likeliest(Map<Hypothesis, Double> probabilities) {
        return probabilities.entrySet().stream().max(Map.Entry.comparingByValue()).orElseThrow().getKey();
    }
}
