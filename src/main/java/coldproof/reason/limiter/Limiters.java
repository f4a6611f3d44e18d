package coldproof.reason.limiter;

import coldproof.trace.Channel;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.DoubleStream;

/** Reasons about what holds a device back. */
public final class Limiters {
    private static final double SURE_ENOUGH = 0.9; // below, the answer is "unclear"
    private static final double NEGLIGIBLE = 0.01; // a hypothesis less likely than this is ruled out
    private static final double POSSIBLE = 0.04; // a hypothesis likelier than this is still in play
    private static final double A_GOOD_PART = 0.3; // share of the time from which each of two limits counts

    private final StudyLimits limits;
    private final List<Condition> conditions;
    private final List<Change> changes;
    private final Optional<Elasticity> followsClock;
    private final List<Prediction> predictions = new ArrayList<>();
    private final List<String> ruledOut = new ArrayList<>();

    private Limiters(List<LimiterTrial> trials, KnownLimits known) {
        conditions = Condition.of(trials);
        limits = StudyLimits.of(known, conditions);
        changes = Change.among(conditions);
        followsClock = Elasticity.of(trials, changes.stream().filter(Change::keepsTheWork).toList());
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
        predictions.addAll(Predictions.notTried(changes));
        return new LimiterAnswer(answers, predictions, ruledOut, NextExperiment.of(conditions, answers, changes), remarks());
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
        boolean bothPossible = Math.min(probabilities.get(Hypothesis.HEAT), probabilities.get(Hypothesis.POWER)) > POSSIBLE;
        if (bothPossible && shares != Shares.UNKNOWN && heatOrPower >= SURE_ENOUGH && shares.heat() + shares.power() > 2 * A_GOOD_PART) {
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

    /** The level at which package power would be held in this condition: the lowest of the stated limit and other conditions' that it does not exceed. */
    private double plateau(Condition condition) {
        boolean free = limits.dieAtLimit(condition) <= 0;
        if (free && StudyLimits.isPowerHeld(condition)) {
            return condition.mean(Channel.PACKAGE_POWER);
        }
        double floor = (1 - Quantity.POWER.margin()) * condition.mean(Channel.PACKAGE_POWER);
        DoubleStream others = conditions.stream().filter(other -> other != condition && limits.dieAtLimit(other) <= 0 && StudyLimits.isPowerHeld(other))
                .mapToDouble(other -> other.mean(Channel.PACKAGE_POWER));
        return DoubleStream.concat(others, DoubleStream.of(limits.packageWatts())).filter(watts -> watts > floor).min().orElse(Double.NaN);
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
        return changes.stream().filter(change -> change.to() == condition && change.kind().helpsCooling() && StudyLimits.isPowerHeld(change.from()))
                .filter(change -> Math.abs(Quantity.POWER.between(change.from(), condition).estimate()) < Quantity.POWER.margin())
                .map(change -> Quantity.CLOCK.between(change.from(), condition).estimate()).filter(gain -> gain > 0.002 && gain < 0.06).findFirst()
                .map(gain -> String.format(Locale.ROOT,
                        "the clock is %.1f %% higher than in poorer cooling at the same pinned power: lower leakage gives that, it is no sign of a heat limit", 100 * Math.expm1(gain)));
    }

    private List<String> remarks() {
        List<String> remarks = new ArrayList<>();
        if (changes.isEmpty()) {
            remarks.add("there is one condition only: what is pinned is seen, how the device answers a change is not");
        }
        if (followsClock.isEmpty()) {
            remarks.add("whether the score follows the clock is not shown by these trials, so the workload itself is ruled out less firmly");
        }
        if (Double.isNaN(limits.dieCelsius())) {
            remarks.add("the die's temperature limit is neither stated nor shown: give it with --temperature-limit if the maker states it");
        }
        return remarks;
    }
}
