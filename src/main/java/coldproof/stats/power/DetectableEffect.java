package coldproof.stats.power;

import coldproof.stats.Argument;
import coldproof.stats.Tail;
import coldproof.stats.distribution.Normal;
import coldproof.stats.distribution.Root;
import coldproof.stats.distribution.StudentT;
import java.util.function.DoubleUnaryOperator;

/** What a plan of given size can show: the power formulas solved for the effect or the margin. */
public final class DetectableEffect {
    private DetectableEffect() {}

    /**
     * Smallest true log effect that a test detects with the wanted power.
     *
     * @param falseAlarm significance level, in (0, 0.5]
     * @param power wanted, above the false-alarm rate and below 1
     * @return log effect above 0; as percent up {@code 100 (exp(x) - 1)}, down {@code 100 (exp(-x) - 1)}
     * @throws IllegalArgumentException if an argument is out of range or NaN, or the allocation does not fit the layout
     */
    public static double smallest(Layout layout, Allocation allocation, double falseAlarm, Tail tail, double power) {
        double noncentrality = noncentrality(layout.degreesOfFreedom(allocation), falseAlarm, tail, power);
        return noncentrality * layout.standardError(allocation);
    }

    /**
     * Noncentrality at which a t test has the wanted power.
     *
     * @param degreesOfFreedom 1 or more, infinity allowed
     * @param falseAlarm significance level, in (0, 0.5]
     * @param power wanted, above the false-alarm rate and below 1
     * @throws IllegalArgumentException if an argument is out of range or NaN
     */
    public static double noncentrality(double degreesOfFreedom, double falseAlarm, Tail tail, double power) {
        Argument.within("degrees of freedom", degreesOfFreedom, 1, Double.POSITIVE_INFINITY);
        Power.checkFalseAlarm(falseAlarm);
        Argument.between("power", power, falseAlarm, 1);
        double guess = StudentT.upperPoint(tail.perSide(falseAlarm), degreesOfFreedom) + Normal.quantile(power);
        return Root.ofRising(new PowerAbove(degreesOfFreedom, falseAlarm, tail, power), Math.max(guess, 0.1), 0.5);
    }

    /** By how much the power at a noncentrality exceeds the wanted one. */
    private record PowerAbove(double degreesOfFreedom, double falseAlarm, Tail tail, double wanted) implements DoubleUnaryOperator {
        @Override
        public double applyAsDouble(double noncentrality) {
            return noncentrality <= 0
                    ? falseAlarm - wanted + noncentrality // below 0 the power rises again: keep the search on the side of the effect
                    : Power.ofT(noncentrality, degreesOfFreedom, falseAlarm, tail) - wanted;
        }
    }

    /**
     * Smallest margin, symmetric on the log scale, within which equivalence is shown with the wanted power.
     *
     * @param logEffect true log effect, finite
     * @param falseAlarm significance level of each of the two tests, in (0, 0.5)
     * @param power wanted, in (0, 1)
     * @return log margin above the size of the effect
     * @throws IllegalArgumentException if an argument is out of range or NaN, or the allocation does not fit the layout
     */
    public static double smallestMargin(Layout layout, Allocation allocation, double logEffect, double falseAlarm, double power) {
        Argument.between("power", power, 0, 1);
        double size = Math.abs(Argument.finite("log effect", logEffect));
        double error = layout.standardError(allocation);
        Argument.between("false-alarm rate", falseAlarm, 0, 0.5);
        double beyond = StudentT.upperPoint(falseAlarm, layout.degreesOfFreedom(allocation)) + Math.max(0.5, Normal.quantile(power));
        return Root.ofRising(margin -> margin <= size
                ? margin - size - power
                : Power.of(Claim.Equivalence.within(margin, logEffect, falseAlarm), layout, allocation) - power,
                size + beyond * error, 0.5 * error);
    }
}
