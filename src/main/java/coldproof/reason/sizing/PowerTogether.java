package coldproof.reason.sizing;

import coldproof.plan.Plan;
import coldproof.stats.Tail;
import coldproof.stats.distribution.StudentT;
import coldproof.stats.power.Claim;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Power to see each of several changes that are judged together by Dunnett's distribution, where every changed level has as many units: as
 * {@link PlanPrecision} gives it, each error rate worked out once. The bound it is held against falls as degrees of freedom or loading grow,
 * so the bounds already known hedge in those that are not.
 *
 * @see "Z. Sidak, Journal of the American Statistical Association 62 (1967) 626-633, for the fall with the loading (from memory)"
 */
final class PowerTogether implements DecisionPower {
    private final Plan plan;
    private final int changes;
    private final double effect;
    private final Map<Precision, Bound> known = new LinkedHashMap<>();

    private record Precision(int degreesOfFreedom, double loading) {}

    private record Bound(double statistic, Claim claim) {}

    PowerTogether(Plan plan) {
        this.plan = plan;
        changes = plan.compare().against().size();
        effect = PlanSize.effect(plan);
    }

    @Override
    public double of(double standardErrorLog, int degreesOfFreedom) {
        return of(standardErrorLog, degreesOfFreedom, 0);
    }

    @Override
    public double of(double standardErrorLog, int degreesOfFreedom, double loading) {
        return known.computeIfAbsent(new Precision(degreesOfFreedom, loading), this::bound).claim().power(standardErrorLog, degreesOfFreedom);
    }

    private Bound bound(Precision precision) {
        double rate = new PlanPrecision(1, precision.degreesOfFreedom(), Collections.nCopies(changes, precision.loading())).errorRate(plan);
        return new Bound(StudentT.upperPoint(Tail.TWO.perSide(rate), precision.degreesOfFreedom()), PlanPrecision.claim(plan, effect, rate));
    }

    @Override
    public double loading(int baselineSessions, int againstSessions) {
        return PlanPrecision.loading(baselineSessions, againstSessions);
    }

    @Override
    public double atMost(double standardErrorLog, int degreesOfFreedom, double loading) {
        double least = 0;
        for (Map.Entry<Precision, Bound> other : known.entrySet()) {
            if (other.getKey().degreesOfFreedom() >= degreesOfFreedom && other.getKey().loading() >= loading) {
                least = Math.max(least, other.getValue().statistic());
            }
        }
        double rate = Math.min(plan.errors().falseAlarm(), 2 * StudentT.survival(least, degreesOfFreedom));
        return PlanPrecision.claim(plan, effect, rate).power(standardErrorLog, degreesOfFreedom);
    }

    @Override
    public DecisionPower generous() {
        return PlanPrecision.claim(plan, effect, plan.errors().falseAlarm())::power;
    }

    @Override
    public DecisionPower strict() {
        return PlanPrecision.claim(plan, effect, plan.errors().falseAlarm() / changes)::power;
    }
}
