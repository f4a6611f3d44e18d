package coldproof.reason.sizing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;

/**
 * The largest standard error that still reaches a power, for each number of degrees of freedom and each loading that had to be asked about.
 * As it grows with both, most plans are settled by a neighbour that is already known, or by a quicker power on the same side.
 */
final class LargestStandardError {
    private static final double RELATIVE_TOLERANCE = 1e-10; // far below the distance of two plans
    private static final int MOST_ROUNDS = 200;
    private final DecisionPower power;
    private final double wanted;
    private final double start;
    private final List<Known> known = new ArrayList<>();
    private final Optional<LargestStandardError> generous;
    private final Optional<LargestStandardError> strict;

    private record Known(int degreesOfFreedom, double loading, double largest) {}

    /** {@code start} is a standard error of a likely size, from where the search sets out. */
    LargestStandardError(DecisionPower power, double wanted, double start) {
        this.power = power;
        this.wanted = wanted;
        this.start = start;
        generous = quicker(power.generous());
        strict = quicker(power.strict());
    }

    private Optional<LargestStandardError> quicker(DecisionPower other) {
        return other == power ? Optional.empty() : Optional.of(new LargestStandardError(other, wanted, start));
    }

    /** Whether a plan of this precision reaches the power. */
    boolean allows(double standardErrorLog, int degreesOfFreedom, double loading) {
        double more = Double.POSITIVE_INFINITY;
        for (Known one : known) {
            if (one.degreesOfFreedom <= degreesOfFreedom && one.loading <= loading && standardErrorLog <= one.largest) {
                return true;
            }
            if (one.degreesOfFreedom >= degreesOfFreedom && one.loading >= loading) {
                more = Math.min(more, one.largest);
            }
        }
        if (standardErrorLog > more || generous.isPresent() && !generous.get().allows(standardErrorLog, degreesOfFreedom, 0)) {
            return false;
        }
        if (strict.isPresent() && strict.get().allows(standardErrorLog, degreesOfFreedom, 0)) {
            return true;
        }
        double largest = solve(degreesOfFreedom, loading, more == Double.POSITIVE_INFINITY ? start : more);
        known.add(new Known(degreesOfFreedom, loading, largest));
        return standardErrorLog <= largest;
    }

    /**
     * Brackets in steps of a factor, then closes in by the Illinois rule, with a halving now and then so that it always ends. 0 when no
     * standard error above a millionth of the start reaches the power.
     */
    private double solve(int degrees, double loading, double guess) {
        DoubleUnaryOperator excess = standardError -> power.of(standardError, degrees, loading) - wanted;
        double low = guess > 0 ? guess : start;
        double lowExcess = excess.applyAsDouble(low);
        double high = low;
        double highExcess = lowExcess;
        while (lowExcess < 0) {
            high = low;
            highExcess = lowExcess;
            low /= 1.5;
            if (low < start * 1e-6) {
                return 0;
            }
            lowExcess = excess.applyAsDouble(low);
        }
        while (highExcess >= 0) {
            low = high;
            lowExcess = highExcess;
            high *= 1.5;
            if (high > start * 1e6) {
                return high;
            }
            highExcess = excess.applyAsDouble(high);
        }
        return between(low, lowExcess, high, highExcess, excess);
    }

    private double between(double reaching, double reachingExcess, double failing, double failingExcess,
            DoubleUnaryOperator excessOf) {
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
            double excess = excessOf.applyAsDouble(next);
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
