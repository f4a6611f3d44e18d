package coldproof.reason.rehearse;

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
import coldproof.plan.RunSheet;
import coldproof.plan.Scheduler;
import coldproof.plan.StartConditions;
import coldproof.plan.Workload;
import coldproof.quantity.Celsius;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;

/** Plans of the invented workshop at Tarn Hollow, laid out in every way there is. */
final class Plans {
    static final double MATTERS = 3;

    private Plans() {}

    /** Chilled air against the room: so many sessions of each, two trials with the fan in two settings each. */
    static Plan sessions(int room, int chilled, int trials, double sessionCv, Claim claim) {
        return plan(new Layout(Layout.Kind.SESSIONS, counts("room", room, "chilled", chilled), trials, Order.COUNTERBALANCED), List.of(air(), fan()), 1.2,
                sessionCv, claim);
    }

    /** Sessions in the cold that cost four times as much as those in the room: 80 min and 20 min with two trials. */
    static Plan dearCold(double matters) {
        Plan plan = sessions(5, 5, 1, 0.8, Claim.GAIN);
        Map<String, Double> setUp = new LinkedHashMap<>();
        setUp.put("room", 720.0);
        setUp.put("chilled", 4320.0);
        Budget budget = new Budget(OptionalDouble.of(240), 0, setUp, List.of("chilled"), OptionalDouble.empty());
        return new Plan(plan.title(), plan.device(), plan.metric(), plan.compare(), matters, plan.claim(), plan.factors(), plan.noise(), plan.errors(), 1,
                plan.layout(), budget, plan.start(), plan.abort(), plan.workload(), plan.seed());
    }

    /** The fan pinned against its curve, in so many sessions of both. */
    static Plan within(int sessions, int trials, Claim claim) {
        return plan(new Layout(Layout.Kind.SESSIONS, Map.of("", sessions), trials, Order.COUNTERBALANCED), List.of(fan()), 1.2, 0.8, claim);
    }

    /** The fan in single trials. */
    static Plan alternating(int auto, int maximum, Order order, Claim claim) {
        return plan(new Layout(Layout.Kind.ALTERNATING, counts("auto", auto, "maximum", maximum), 1, order), List.of(fan()), 1.2, 0, claim);
    }

    /** The fan in pairs of trials. */
    static Plan paired(int pairs, Order order, Claim claim) {
        return plan(new Layout(Layout.Kind.PAIRED, Map.of("", pairs), 1, order), List.of(fan()), 1.2, 0, claim);
    }

    /** The same plan with looks before its end. */
    static Plan looking(Plan plan, int looks) {
        return plan.with(plan.layout(), looks);
    }

    static RunSheet sheet(Plan plan) {
        return Scheduler.draw(plan, new SplittableRandom(plan.seed()));
    }

    private static Factor air() {
        return new Factor("ambient", Change.PER_SESSION, List.of(new Level("room", "21 °C", Optional.of(new Celsius(21))),
                new Level("chilled", "-9 °C", Optional.of(new Celsius(-9)))));
    }

    private static Factor fan() {
        return new Factor("fan", Change.PER_TRIAL, List.of(Level.named("auto"), Level.named("maximum")));
    }

    private static Map<String, Integer> counts(String a, int countA, String b, int countB) {
        Map<String, Integer> counts = new LinkedHashMap<>();
        counts.put(a, countA);
        counts.put(b, countB);
        return counts;
    }

    private static Plan plan(Layout layout, List<Factor> factors, double runCv, double sessionCv, Claim claim) {
        Factor compared = factors.get(0);
        Map<String, Double> setUp = new LinkedHashMap<>();
        setUp.put("room", 300.0);
        setUp.put("chilled", 1500.0);
        return new Plan("Does it help?", "trail laptop, unit 2", new Metric("render rate", "frames/s", Better.HIGHER),
                new Comparison(compared.name(), compared.levelNames().get(0), List.of(compared.levelNames().get(1))), MATTERS, claim, factors,
                Optional.of(new NoiseAssumption(runCv, sessionCv, OptionalDouble.empty(), OptionalDouble.empty(), "guess")), new Errors(0.05, 0.1), 1, layout,
                new Budget(OptionalDouble.of(240), 1200, setUp, List.of("chilled"), OptionalDouble.of(3 * 3600)), StartConditions.NONE, AbortLimits.NONE,
                Workload.NONE, 20260114);
    }
}
