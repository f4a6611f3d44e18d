package coldproof.job;

import coldproof.plan.AbortLimits;
import coldproof.plan.Better;
import coldproof.plan.Budget;
import coldproof.plan.Change;
import coldproof.plan.Claim;
import coldproof.plan.Comparison;
import coldproof.plan.Errors;
import coldproof.plan.Factor;
import coldproof.plan.Layout;
import coldproof.plan.Level;
import coldproof.plan.Metric;
import coldproof.plan.NoiseAssumption;
import coldproof.plan.Order;
import coldproof.plan.Plan;
import coldproof.plan.StartConditions;
import coldproof.plan.Workload;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A new plan in the making: one changed level against a baseline, the rest as people usually want it.
 *
 * @param title the question
 * @param device what is tested
 * @param metric what is measured
 * @param factor the compared factor
 * @param baseline its level compared with
 * @param against its changed level
 * @param change how often it is set
 * @param mattersPercent the smallest change worth having
 * @param claim what is to be shown
 * @param noise the noise planned with, where anything is known
 * @param errors accepted rates of wrong answers
 * @param kind arrangement
 * @param perLevel sessions, trials or pairs of each level
 * @param trialsPerCondition trials of each level in a session
 * @param trialSeconds time of a trial
 * @param soakSeconds time to settle at the start of a session
 * @param seed drives the run order
 */
public record PlanDraft(String title, String device, Metric metric, String factor, Level baseline, Level against, Change change, double mattersPercent,
        Claim claim, Optional<NoiseAssumption> noise, Errors errors, Layout.Kind kind, int perLevel, int trialsPerCondition, OptionalDouble trialSeconds,
        double soakSeconds, long seed) {
    /** The plan this draft amounts to. */
    public Plan plan() {
        Factor compared = new Factor(factor, change, List.of(baseline, against));
        List<String> outdoors = change == Change.PER_SESSION
                ? compared.levels().stream().filter(level -> level.air().isPresent() && level.air().get().degrees() < 10).map(Level::name).toList() : List.of();
        Budget budget = new Budget(trialSeconds, soakSeconds, Map.of(), outdoors, OptionalDouble.empty());
        return new Plan(title, device, metric, new Comparison(factor, baseline.name(), List.of(against.name())), mattersPercent, claim, List.of(compared), noise,
                errors, 1, layout(), budget, StartConditions.NONE, AbortLimits.NONE, Workload.NONE, seed);
    }

    private Layout layout() {
        Map<String, Integer> counts = new LinkedHashMap<>();
        if (kind == Layout.Kind.PAIRED || kind == Layout.Kind.SESSIONS && change == Change.PER_TRIAL) {
            counts.put("", perLevel);
        } else {
            counts.put(baseline.name(), perLevel);
            counts.put(against.name(), perLevel);
        }
        Order order = kind == Layout.Kind.PAIRED ? Order.RANDOMISED : Order.COUNTERBALANCED;
        return new Layout(kind, counts, kind == Layout.Kind.SESSIONS ? trialsPerCondition : 1, order);
    }

    /** The metric of a rate or a time. */
    public static Metric metric(String name, String unit, boolean higherIsBetter) {
        return new Metric(name, unit, higherIsBetter ? Better.HIGHER : Better.LOWER);
    }
}
