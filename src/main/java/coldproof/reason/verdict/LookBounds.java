package coldproof.reason.verdict;

import coldproof.reason.looks.LookCost;
import coldproof.reason.looks.LookPoint;
import coldproof.stats.Tail;
import coldproof.stats.distribution.Normal;
import coldproof.stats.model.Estimate;
import coldproof.stats.sequential.ConditionalPower;
import coldproof.stats.sequential.SequentialBoundary;
import coldproof.stats.sequential.StagewiseInference;
import coldproof.stats.sequential.StudentLooks;
import java.util.ArrayList;
import java.util.List;
import java.util.random.RandomGenerator.SplittableGenerator;

/** The error rates of the looks taken so far, at the information they really had. Looks are added in order; then it is asked. */
final class LookBounds {
    private static final double FARTHEST = 37; // normal deviate beyond which a tail underflows

    private final double falseAlarm;
    private final SplittableGenerator chanceOfChange;
    private final SplittableGenerator chanceOfSameness;
    private final List<Double> fractions = new ArrayList<>();
    private final List<Double> degrees = new ArrayList<>();
    private double[] changeP;
    private double[] samenessP;
    private SequentialBoundary plain;

    LookBounds(double falseAlarm, SplittableGenerator chance) {
        this.falseAlarm = falseAlarm;
        this.chanceOfChange = chance.split();
        this.chanceOfSameness = chance.split();
    }

    /** Adds a look; says no where it brings no more information than the look before. */
    boolean add(double fraction, double degreesOfFreedom) {
        double before = fractions.isEmpty() ? 0 : fractions.get(fractions.size() - 1);
        double capped = Math.min(1, fraction);
        if (!(capped > before)) {
            return false;
        }
        fractions.add(capped);
        degrees.add(degrees.isEmpty() ? degreesOfFreedom : Math.max(degreesOfFreedom, degrees.get(degrees.size() - 1)));
        return true;
    }

    private static double[] array(List<Double> values) {
        return values.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private void solve() {
        if (changeP == null) {
            plain = SequentialBoundary.spending(LookCost.SPENDING, falseAlarm, Tail.TWO, array(fractions));
            SequentialBoundary sameness = SequentialBoundary.spending(LookCost.SPENDING, Math.min(2 * falseAlarm, 0.99), Tail.TWO, array(fractions));
            changeP = StudentLooks.nominalP(plain, array(degrees), chanceOfChange);
            samenessP = StudentLooks.nominalP(sameness, array(degrees), chanceOfSameness);
        }
    }

    ErrorRates rates(int look) {
        solve();
        return ErrorRates.atLook(changeP[look], samenessP[look] / 2);
    }

    double fraction(int look) {
        return fractions.get(look);
    }

    double nominalP(int look) {
        solve();
        return changeP[look];
    }

    double spent(int look) {
        solve();
        return plain.spent(look);
    }

    private static double[] deviates(double[] p) {
        double[] z = new double[p.length];
        for (int k = 0; k < z.length; k++) {
            z[k] = Math.min(FARTHEST, Normal.upperPoint(p[k] / 2));
        }
        return z;
    }

    /** The bounds of the looks as normal deviates of their p values. */
    SequentialBoundary boundary() {
        solve();
        return boundary(changeP);
    }

    /** The same of the first looks with other p values, such as those of one of several changes. */
    SequentialBoundary boundary(double[] p) {
        return SequentialBoundary.of(deviates(p), Tail.TWO, array(fractions.subList(0, p.length)));
    }

    /** Chance to stop above at the looks to come if the change is the margin. */
    double chance(Estimate now, double margin, List<LookPoint> toCome) {
        solve();
        List<Double> all = new ArrayList<>(fractions);
        for (LookPoint point : toCome) {
            if (point.fraction() > all.get(all.size() - 1)) {
                all.add(point.fraction());
            }
        }
        if (all.get(all.size() - 1) < 1) {
            all.add(1.0);
        }
        SequentialBoundary whole = SequentialBoundary.spending(LookCost.SPENDING, falseAlarm, Tail.TWO, array(all));
        int look = fractions.size() - 1;
        double finalError = now.standardError() * Math.sqrt(fractions.get(look));
        return look == whole.looks() - 1 ? 0 : ConditionalPower.of(whole, look, StagewiseInference.deviate(now), margin / finalError);
    }
}
