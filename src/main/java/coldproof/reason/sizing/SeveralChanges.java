package coldproof.reason.sizing;

import coldproof.plan.Plan;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.IntToDoubleFunction;

/** Sizes a plan that compares several changes with one baseline. */
final class SeveralChanges {
    private static final int MOST_UNITS = 1_000_000; // of the baseline; more than anybody can run

    private SeveralChanges() {}

    /** That the power is that of each change; the bound for all of them is Bonferroni's inequality. */
    static Optional<Warning> warning(Plan plan, double power) {
        int changes = plan.compare().against().size();
        if (changes == 1 || Double.isNaN(power)) {
            return Optional.empty();
        }
        long all = Math.round(100 * Math.max(0, 1 - changes * (1 - power)));
        return Optional.of(new Warning("several-changes", changes + " changes are judged together, as the verdict judges them. The power is that of each"
                + (plan.compare().against().stream().map(level -> plan.layout().counts().getOrDefault(level, 0)).distinct().count() > 1 ? ", of the one with the fewest runs" : "")
                + "; all of them are seen in at least " + all + " of 100 studies."));
    }

    /** The fewest units, in the proportions of the plan, that give each of several changes the wanted power. */
    static Optional<Size> needed(Plan plan, int trialsPerUnit, Size size) {
        PlanPrecision.Units laidOut = PlanPrecision.Units.of(plan);
        IntToDoubleFunction power = baseline -> {
            PlanPrecision precision = PlanPrecision.ofUnits(plan, laidOut.scaledTo(baseline), trialsPerUnit, plan.noise().orElseThrow());
            return precision.degreesOfFreedom() < 1 ? 0 : precision.power(plan).applyAsDouble(PlanSize.effect(plan));
        };
        int few = laidOut.baseline();
        int enough = few + 1;
        while (power.applyAsDouble(enough) < plan.errors().power()) {
            if (enough > MOST_UNITS) {
                return Optional.empty();
            }
            few = enough;
            enough *= 2;
        }
        while (enough - few > 1) {
            int middle = few + (enough - few) / 2;
            if (power.applyAsDouble(middle) < plan.errors().power()) {
                few = middle;
            } else {
                enough = middle;
            }
        }
        PlanPrecision.Units units = laidOut.scaledTo(enough);
        PlanPrecision precision = PlanPrecision.ofUnits(plan, units, trialsPerUnit, plan.noise().orElseThrow());
        return Optional.of(new Size(size.layout(), size.claim(), size.logEffect(), units.perLevel(), (long) units.total() * trialsPerUnit,
                precision.degreesOfFreedom(), power.applyAsDouble(enough), OptionalDouble.of(power.applyAsDouble(few)), OptionalDouble.empty(),
                OptionalDouble.empty(), size.smallestRandomisationP(), List.of()));
    }
}
