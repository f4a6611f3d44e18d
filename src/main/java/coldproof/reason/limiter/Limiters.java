package coldproof.reason.limiter;

import coldproof.quantity.Interval;
import coldproof.trace.Channel;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Reasons about what holds a device back. */
public final class Limiters {
    private static final double SURE_ENOUGH = 0.9; // below, the answer is "unclear"
    private static final double NEGLIGIBLE = 0.01; // a hypothesis less likely than this is ruled out
    private static final double A_GOOD_PART = 0.3; // share of the time from which each of two limits counts

    private final StudyLimits limits;
    private final List<Condition> conditions;
    private final List<Change> changes;
    private final Optional<Interval> followsClock;
    private final List<Prediction> predictions = new ArrayList<>();
    private final List<String> ruledOut = new ArrayList<>();

    private Limiters(List<LimiterTrial> trials, KnownLimits known) {
        conditions = Condition.of(trials);
        limits = StudyLimits.of(known, conditions);
        changes = Change.among(conditions);
        followsClock = followsClock(trials);
    }

    /**
     * Names the limiter under each condition.
     *
     * @param trials one or more trials; those of equal levels form a condition
     * @param known limits the maker states
     */
    public static LimiterAnswer explain(List<LimiterTrial> trials, KnownLimits known) {
        return new Limiters(trials, known).answer();
    }

    private LimiterAnswer answer() {
        List<LimiterAnswer.OfCondition> answers = conditions.stream().map(this::answer).toList();
        return new LimiterAnswer(answers, predictions, ruledOut, NextExperiment.of(conditions, answers, changes), remarks());
    }

    /** Loops show most directly whether the rate follows the clock; without them the change with the largest move of the clock. */
    private Optional<Interval> followsClock(List<LimiterTrial> trials) {
        Optional<Interval> inside = Elasticity.inside(trials);
        if (Elasticity.answer(inside) != Elasticity.Answer.UNKNOWN) {
            return inside;
        }
        return changes.stream().max(Comparator.comparingDouble(change -> size(Quantity.CLOCK.between(change.from(), change.to()))))
                .flatMap(change -> Elasticity.between(Quantity.PERFORMANCE.between(change.from(), change.to()), Quantity.CLOCK.between(change.from(), change.to())));
    }

    private static double size(Effect clock) {
        return Double.isNaN(clock.estimate()) ? 0 : Math.abs(clock.estimate());
    }

    private LimiterAnswer.OfCondition answer(Condition condition) {
        List<Evidence> evidence = new EvidenceFinder(condition, limits, conditions).find(followsClock);
        List<Prediction> own = Predictions.from(condition, changes);
        predictions.addAll(own);
        Map<Hypothesis, Double> probabilities = Weighing.probabilities(evidence, own);
        double plateau = plateau(condition);
        Shares shares = limits.dieAtLimit(condition) > 0 ? Shares.of(condition, limits.dieCelsius(), plateau) : Shares.UNKNOWN;
        Limiter limiter = limiter(probabilities, shares);
        double confidence = confidence(limiter, probabilities);
        List<String> texts = new ArrayList<>(texts(evidence, Weighing.likeliest(probabilities)));
        leakage(condition, limiter).ifPresent(texts::add);
        ruledOut(condition, evidence, own, probabilities);
        return new LimiterAnswer.OfCondition(condition.levels(), limiter, confidence, probabilities, condition.all().size(), condition.boostSeconds(),
                Condition.median(condition.cold(), trial -> trial.trace().boost().seconds()), condition.sustained(), Change.resistance(condition),
                shares.heat(), shares.power(), texts, Headroom.of(condition, limiter, limits, plateau, conditions));
    }

    private static Limiter limiter(Map<Hypothesis, Double> probabilities, Shares shares) {
        double heatOrPower = probabilities.get(Hypothesis.HEAT) + probabilities.get(Hypothesis.POWER);
        if (shares != Shares.UNKNOWN && heatOrPower >= SURE_ENOUGH && shares.heat() + shares.power() > 2 * A_GOOD_PART) {
            if (shares.heat() >= A_GOOD_PART && shares.power() >= A_GOOD_PART) {
                return Limiter.MIXED;
            }
            return shares.heat() > shares.power() ? Limiter.HEAT : Limiter.POWER;
        }
        Hypothesis likeliest = Weighing.likeliest(probabilities);
        return probabilities.get(likeliest) >= SURE_ENOUGH ? Limiter.of(likeliest) : Limiter.UNCLEAR;
    }

    private static double confidence(Limiter limiter, Map<Hypothesis, Double> probabilities) {
        if (limiter == Limiter.MIXED) {
            return probabilities.get(Hypothesis.HEAT) + probabilities.get(Hypothesis.POWER);
        }
        return limiter == Limiter.UNCLEAR ? probabilities.get(Weighing.likeliest(probabilities)) : probabilities.get(Hypothesis.valueOf(limiter.name()));
    }

    /** The level at which package power is held in this condition, or would be: its own, another condition's, or the stated limit. */
    private double plateau(Condition condition) {
        if (StudyLimits.isPowerFlat(condition)) {
            return condition.mean(Channel.PACKAGE_POWER);
        }
        double others = conditions.stream().filter(StudyLimits::isPowerFlat).mapToDouble(other -> other.mean(Channel.PACKAGE_POWER))
                .filter(watts -> watts > condition.mean(Channel.PACKAGE_POWER)).min().orElse(Double.NaN);
        return Double.isNaN(others) ? limits.packageWatts() : others;
    }

    /** Findings that speak for a hypothesis, the weightiest first. */
    private static List<String> texts(List<Evidence> evidence, Hypothesis hypothesis) {
        return evidence.stream().sorted(Comparator.comparingDouble(one -> -weight(one, hypothesis))).map(Evidence::text).toList();
    }

    /** How much a finding speaks for a hypothesis against the best of the others. */
    private static double weight(Evidence evidence, Hypothesis hypothesis) {
        double best = 0;
        for (Hypothesis other : Hypothesis.values()) {
            best = other == hypothesis ? best : Math.max(best, evidence.under(other) * (other == Hypothesis.WORKLOAD ? 0.5 : 1));
        }
        return evidence.under(hypothesis) / best;
    }

    private void ruledOut(Condition condition, List<Evidence> evidence, List<Prediction> own, Map<Hypothesis, Double> probabilities) {
        for (Hypothesis hypothesis : Hypothesis.values()) {
            if (probabilities.get(hypothesis) < NEGLIGIBLE) {
                Optional<Evidence> strongest = evidence.stream().min(Comparator.comparingDouble(one -> one.under(hypothesis)));
                Optional<Prediction> failed = own.stream()
                        .filter(prediction -> prediction.hypothesis() == hypothesis && prediction.result() == Prediction.Result.RULED_OUT).findFirst();
                strongest.ifPresent(one -> ruledOut.add(hypothesis.word() + " under " + condition.name() + ": " + one.text()
                        + failed.map(out -> "; with " + out.change() + " it predicts that " + out.quantity() + " " + out.predicted() + ", observed: " + out.observed()).orElse("")));
            }
        }
    }

    /** A few per cent of clock gained in colder air at unchanged, pinned power come from lower leakage, not from heat. */
    private Optional<String> leakage(Condition condition, Limiter limiter) {
        if (limiter != Limiter.POWER) {
            return Optional.empty();
        }
        return changes.stream().filter(change -> change.to() == condition && change.kind().helpsCooling() && StudyLimits.isPowerFlat(change.from()))
                .filter(change -> Math.abs(Quantity.POWER.between(change.from(), condition).estimate()) < Quantity.POWER.margin())
                .map(change -> Quantity.CLOCK.between(change.from(), condition).estimate()).filter(gain -> gain > 0.002 && gain < 0.06).findFirst()
                .map(gain -> String.format(java.util.Locale.ROOT,
                        "the clock is %.1f %% higher than in poorer cooling at the same pinned power: lower leakage gives that, it is no sign of a heat limit", 100 * Math.expm1(gain)));
    }

    private List<String> remarks() {
        List<String> remarks = new ArrayList<>();
        if (changes.isEmpty()) {
            remarks.add("there is one condition only: what is pinned is seen, how the device answers a change is not");
        }
        if (Elasticity.answer(followsClock) == Elasticity.Answer.UNKNOWN) {
            remarks.add("whether the score follows the clock is not shown by these trials, so the workload itself is ruled out less firmly");
        }
        if (Double.isNaN(limits.dieCelsius())) {
            remarks.add("the die's temperature limit is neither stated nor shown: give it with --temperature-limit if the maker states it");
        }
        return remarks;
    }
}
