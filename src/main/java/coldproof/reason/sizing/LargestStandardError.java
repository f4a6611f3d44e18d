package coldproof.reason.sizing;

import java.util.Map;
import java.util.TreeMap;

/**
 * The largest standard error that still reaches a power, for each number of degrees of freedom that had to be asked about. As it grows with
 * the degrees of freedom, most plans are settled by a neighbour that is already known.
 */
final class LargestStandardError {
    private static final double RELATIVE_TOLERANCE = 1e-10; // far below the distance of two plans
    private static final int MOST_ROUNDS = 200;
    private final DecisionPower power;
    private final double wanted;
    private final double start;
    private final TreeMap<Integer, Double> known = new TreeMap<>();

    /** {@code start} is a standard error of a likely size, from where the search sets out. */
    LargestStandardError(DecisionPower power, double wanted, double start) {
        this.power = power;
        this.wanted = wanted;
        this.start = start;
    }

    /** Whether a plan of this precision reaches the power. */
    boolean allows(double standardErrorLog, int degreesOfFreedom) {
        Map.Entry<Integer, Double> fewer = known.floorEntry(degreesOfFreedom);
        if (fewer != null && standardErrorLog <= fewer.getValue()) {
            return true;
        }
        Map.Entry<Integer, Double> more = known.ceilingEntry(degreesOfFreedom);
        if (more != null && standardErrorLog > more.getValue()) {
            return false;
        }
        double largest = solve(degreesOfFreedom, more == null ? start : more.getValue());
        known.put(degreesOfFreedom, largest);
        return standardErrorLog <= largest;
    }

    /**
     * Brackets in steps of a factor, then closes in by the Illinois rule, with a halving now and then so that it always ends. 0 when no
     * standard error above a millionth of the start reaches the power.
     */
    private double solve(int degrees, double guess) {
        double low = guess > 0 ? guess : start;
        double lowExcess = power.of(low, degrees) - wanted;
        double high = low;
        double highExcess = lowExcess;
        while (lowExcess < 0) {
            high = low;
            highExcess = lowExcess;
            low /= 1.5;
            if (low < start * 1e-6) {
                return 0;
            }
            lowExcess = power.of(low, degrees) - wanted;
        }
        while (highExcess >= 0) {
            low = high;
            lowExcess = highExcess;
            high *= 1.5;
            if (high > start * 1e6) {
                return high;
            }
            highExcess = power.of(high, degrees) - wanted;
        }
        return between(low, lowExcess, high, highExcess, degrees);
    }

    private double between(double reaching, double reachingExcess, double failing, double failingExcess, int degrees) {
        double low = reaching;
        double high = failing;
        double lowExcess = reachingExcess;
        double highExcess = failingExcess;
        int side = 0;
        for (int round = 0; round < MOST_ROUNDS && high - low > RELATIVE_TOLERANCE * low; round++) {
            double next = low + (high - low) * lowExcess / (lowExcess - highExcess);
            if (!(next > low && next < high) || round % 8 == 7) {
                next = low + (high - low) / 2;
            }
            double excess = power.of(next, degrees) - wanted;
            if (excess >= 0) {
                low = next;
                lowExcess = excess;
                highExcess = side > 0 ? highExcess / 2 : highExcess;
                side = 1;
            } else {
                high = next;
                highExcess = excess;
                lowExcess = side < 0 ? lowExcess / 2 : lowExcess;
                side = -1;
            }
        }
        return low;
    }
}
