package coldproof.stats.power;

import coldproof.stats.Argument;
import coldproof.stats.distribution.Normal;
import java.util.OptionalDouble;

/** The smallest whole number of units that reaches a power, exactly: a rough guess, then the power itself around it. */
public final class SampleSize {
    private static final int MOST = 1_000_000_000;

    private SampleSize() {}

    /**
     * The answer.
     *
     * @param allocation units under each level
     * @param power with them
     * @param powerWithOneFewer with one unit fewer under the baseline and the other level following in ratio; empty where there is no
     *     smaller plan
     */
    public record Smallest(Allocation allocation, double power, OptionalDouble powerWithOneFewer) {}

    /**
     * Fewest units, the same number under both levels.
     *
     * @param power wanted, in (0, 1)
     * @throws IllegalArgumentException as {@link #smallest(Claim, Layout, double, double)}
     */
    public static Smallest smallest(Claim claim, Layout layout, double power) {
        return smallest(claim, layout, 1, power);
    }

    /**
     * Fewest units under the baseline, at least 2, with {@code ratio} times as many under the other level (to the nearest whole number, at
     * least 2).
     *
     * @param ratio units under the other level for each under the baseline, in [0.001, 1000]; 1 for pairs
     * @param power wanted, in (0, 1)
     * @throws IllegalArgumentException if an argument is out of range or NaN, the claim is false so that no number of units shows it, or more
     *     than 1,000,000,000 would be needed
     */
    public static Smallest smallest(Claim claim, Layout layout, double ratio, double power) {
        Argument.within("ratio", ratio, 0.001, 1000);
        Argument.between("power", power, 0, 1);
        if (layout.isPaired() && ratio != 1) {
            throw new IllegalArgumentException("ratio " + ratio + " is not 1, but pairs have one trial of each level");
        }
        if (!claim.isReachable()) {
            throw new IllegalArgumentException("no number of units shows " + claim);
        }
        return new Search(claim, layout, ratio, power).run();
    }

    private record Search(Claim claim, Layout layout, double ratio, double wanted) {
        private double powerAt(int baseline) {
            return Power.of(claim, layout, allocation(baseline));
        }

        private Allocation allocation(int baseline) {
            return Allocation.ofRatio(baseline, ratio, layout.fewest());
        }

        Smallest run() {
            int least = layout.fewest();
            int here = guess();
            double power = powerAt(here);
            int enough; // the smallest number known to reach the power, and the largest known not to
            double powerOfEnough;
            int few;
            double powerOfFew;
            if (power >= wanted) {
                enough = here;
                powerOfEnough = power;
                few = least - 1;
                powerOfFew = Double.NaN;
                for (int step = 1; enough > least; step *= 2) {
                    int lower = Math.max(least, enough - step);
                    double powerOfLower = powerAt(lower);
                    if (powerOfLower < wanted) {
                        few = lower;
                        powerOfFew = powerOfLower;
                        break;
                    }
                    enough = lower;
                    powerOfEnough = powerOfLower;
                }
            } else {
                few = here;
                powerOfFew = power;
                int step = 1;
                do {
                    if (few > MOST - step) {
                        throw new IllegalArgumentException("more than " + MOST + " units under the baseline would be needed");
                    }
                    enough = few + step;
                    powerOfEnough = powerAt(enough);
                    if (powerOfEnough < wanted) {
                        few = enough;
                        powerOfFew = powerOfEnough;
                    }
                    step *= 2;
                } while (powerOfEnough < wanted);
            }
            while (enough - few > 1) {
                int middle = few + (enough - few) / 2;
                double powerOfMiddle = powerAt(middle);
                if (powerOfMiddle >= wanted) {
                    enough = middle;
                    powerOfEnough = powerOfMiddle;
                } else {
                    few = middle;
                    powerOfFew = powerOfMiddle;
                }
            }
            OptionalDouble before = few < least ? OptionalDouble.empty() : OptionalDouble.of(powerOfFew);
            return new Smallest(allocation(enough), powerOfEnough, before);
        }

        /** Normal theory, corrected once for the degrees of freedom by the first term of Cornish and Fisher's expansion. */
        private int guess() {
            int many = 1000;
            double unitError = layout.standardError(allocation(many)) * Math.sqrt(many);
            double error = claim.standardErrorFor(wanted);
            double normal = square(unitError / error);
            int first = (int) Math.min(MOST, Math.max(layout.fewest(), Math.ceil(normal)));
            double degreesOfFreedom = layout.degreesOfFreedom(allocation(first));
            double critical = claim.normalCritical();
            double rest = Normal.quantile(wanted);
            double widened = critical * (1 + (1 + critical * critical) / (4 * degreesOfFreedom));
            double spread = Math.sqrt(1 + widened * widened / (2 * degreesOfFreedom)); // of the critical limit around the effect
            double factor = (widened + rest * spread) / (critical + rest);
            double corrected = factor > 0 && factor < 10 ? normal * square(factor) : normal;
            return (int) Math.min(MOST, Math.max(layout.fewest(), Math.ceil(corrected)));
        }

        private static double square(double x) {
            return x * x;
        }
    }
}
