package coldproof.reason.verdict;

import coldproof.quantity.Interval;
import coldproof.stats.Tail;
import coldproof.stats.distribution.StudentT;
import coldproof.stats.model.Estimate;
import coldproof.stats.multiple.ManyToOne;
import java.util.function.ToDoubleFunction;

/**
 * How far the intervals of a verdict reach.
 *
 * @param rates the error rates the intervals stand for
 * @param reach standard errors from the estimate to each end of the interval of the change
 * @param equivalenceReach the same for the interval that judges sameness
 */
record Ruler(ErrorRates rates, ToDoubleFunction<Estimate> reach, ToDoubleFunction<Estimate> equivalenceReach) {
    /** One change judged alone. */
    static Ruler alone(ErrorRates rates) {
        return new Ruler(rates, t(rates.change() / 2), t(rates.sameness()));
    }

    /** Several changes, each with an equal share of the error rates, whatever their dependence. */
    static Ruler shared(ErrorRates rates, int comparisons) {
        Ruler one = alone(rates.sharedBy(comparisons));
        return new Ruler(rates, one.reach(), one.equivalenceReach());
    }

    /**
     * Several changes against one baseline: Dunnett's intervals of the changes. Sameness gets equal shares, because a wrong call may lie on
     * either side and the calls are then less alike than Dunnett's distribution has them.
     */
    static Ruler together(ErrorRates rates, ManyToOne family) {
        double critical = family.criticalValue(1 - rates.change(), Tail.TWO);
        return new Ruler(rates, estimate -> critical, t(rates.sameness() / family.comparisons()));
    }

    private static ToDoubleFunction<Estimate> t(double upperTail) {
        return estimate -> StudentT.upperPoint(upperTail, estimate.degreesOfFreedom());
    }

    Interval interval(Estimate estimate) {
        return around(estimate, 1 - rates.change(), reach.applyAsDouble(estimate));
    }

    Interval equivalence(Estimate estimate) {
        return around(estimate, 1 - 2 * rates.sameness(), equivalenceReach.applyAsDouble(estimate));
    }

    static Interval around(Estimate estimate, double level, double reach) {
        double half = estimate.standardError() == 0 ? 0 : reach * estimate.standardError();
        return new Interval(level, estimate.logDifference() - half, estimate.logDifference() + half);
    }
}
