package coldproof.stats.sequential;

import coldproof.stats.Argument;
import java.util.Arrays;

/**
 * Chance that a study under way will still stop on the upper side.
 *
 * @see "K. K. G. Lan, R. Simon, M. Halperin, Stochastically curtailed tests in long-term clinical trials, Sequential Analysis 1 (1982) 207-219
 *     (from memory)"
 */
public final class ConditionalPower {
    private ConditionalPower() {}

    /**
     * The chance, given a result and a true effect.
     *
     * @param boundary bounds of all looks, the last at the full information
     * @param look look that was just taken, first is 0, not the last
     * @param z normal deviate seen there
     * @param drift mean of the last normal deviate under the true effect: effect over the standard error of the whole study
     * @return in [0, 1]
     * @throws IllegalArgumentException if an argument is out of range or NaN
     */
    public static double of(SequentialBoundary boundary, int look, double z, double drift) {
        Argument.finite("deviate", z);
        Argument.finite("drift", drift);
        if (look < 0 || look >= boundary.looks() - 1) {
            throw new IllegalArgumentException("look " + look + " is outside [0, " + (boundary.looks() - 1) + ")");
        }
        double[] fractions = boundary.fractions();
        double[] later = Arrays.copyOfRange(fractions, look + 1, fractions.length);
        Walk walk = Walk.from(fractions[look], z * Math.sqrt(fractions[look]), drift, later);
        double sum = 0;
        for (int k = look + 1; k < fractions.length; k++) {
            sum += walk.above(fractions[k], boundary.score(k));
            walk = walk.goOn(fractions[k], boundary.lowestScore(k), boundary.score(k));
        }
        return sum;
    }
}
