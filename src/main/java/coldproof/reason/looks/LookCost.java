package coldproof.reason.looks;

import coldproof.stats.Tail;
import coldproof.stats.distribution.Normal;
import coldproof.stats.sequential.SequentialBoundary;
import coldproof.stats.sequential.SequentialDesign;
import coldproof.stats.sequential.Spending;
import coldproof.stats.sequential.StudentLooks;
import java.util.ArrayList;
import java.util.List;
import java.util.random.RandomGenerator.SplittableGenerator;

/**
 * What the looks of a plan cost and save.
 *
 * @param unitWord what is counted: session, pair or trial
 * @param looks the looks with their bounds
 * @param inflation how much larger the study must be at most for the power it would have without looks, 1 or more
 * @param power chance to stop on the right side if the change is what the plan is sized for; NaN where the noise is not known
 * @param expectedUnitsIfNone mean sessions, pairs or trials when there is no change
 * @param expectedUnitsIfChange the same when the change is what the plan is sized for; NaN where the noise is not known
 */
public record LookCost(String unitWord, List<Bound> looks, double inflation, double power, double expectedUnitsIfNone, double expectedUnitsIfChange) {
    /** The spending used throughout: little early, so that the last look is hardly harder to pass. */
    public static final Spending SPENDING = Spending.OBRIEN_FLEMING_LIKE;

    /** Copies. */
    public LookCost {
        looks = List.copyOf(looks);
    }

    /**
     * A look and what stops the study there.
     *
     * @param point when it is
     * @param nominalP the p value the test must reach there
     * @param spent false-alarm rate spent up to and with it
     */
    public record Bound(LookPoint point, double nominalP, double spent) {}

    /**
     * The cost.
     *
     * @param schedule looks of the plan
     * @param falseAlarm two-sided rate of the whole study
     * @param wantedPower of the plan
     * @param powerWithoutLooks of the same study judged once at its end; NaN where it is not known
     * @param chance for the bounds of small studies
     */
    public static LookCost of(LookSchedule schedule, double falseAlarm, double wantedPower, double powerWithoutLooks, SplittableGenerator chance) {
        List<LookPoint> points = schedule.points();
        double[] fractions = points.stream().mapToDouble(LookPoint::fraction).toArray();
        SequentialBoundary boundary = SequentialBoundary.spending(SPENDING, falseAlarm, Tail.TWO, fractions);
        double[] p = StudentLooks.nominalP(boundary, points.stream().mapToDouble(LookPoint::degreesOfFreedom).toArray(), chance);
        List<Bound> bounds = new ArrayList<>();
        for (int k = 0; k < p.length; k++) {
            bounds.add(new Bound(points.get(k), p[k], boundary.spent(k)));
        }
        SequentialDesign wanted = SequentialDesign.ofPower(boundary, Math.max(wantedPower, falseAlarm));
        boolean known = powerWithoutLooks > falseAlarm && powerWithoutLooks < 1;
        double drift = known ? Normal.upperPoint(falseAlarm / 2) + Normal.quantile(powerWithoutLooks) : Double.NaN;
        return new LookCost(schedule.unitWord(), bounds, wanted.inflation(), known ? SequentialDesign.power(boundary, drift) : Double.NaN,
                expectedUnits(points, boundary.stopped(0)), known ? expectedUnits(points, boundary.stopped(drift)) : Double.NaN);
    }

    private static double expectedUnits(List<LookPoint> points, double[] stopped) {
        double mean = 0;
        double going = 1;
        for (int k = 0; k < stopped.length - 1; k++) {
            mean += stopped[k] * points.get(k).units();
            going -= stopped[k];
        }
        return mean + going * points.get(points.size() - 1).units();
    }
}
