package coldproof.stats.sequential;

import coldproof.stats.Argument;
import coldproof.stats.Tail;
import coldproof.stats.distribution.Normal;
import coldproof.stats.distribution.Root;
import coldproof.stats.distribution.StudentT;
import coldproof.stats.interval.ConfidenceInterval;
import coldproof.stats.model.Estimate;

/**
 * What to report after a study with looks has stopped. The plain estimate of a study that stopped early is too large on average and its plain
 * interval too narrow; here results are ordered by stage (stopping earlier on a side counts as farther out on it) and estimate and interval are
 * those drifts under which the observed result is the median, or one of the tails.
 *
 * @param p two-sided p value in that ordering
 * @param median median unbiased estimate of the log change
 * @param interval interval of the log change
 * @see "C. Jennison, B. W. Turnbull, Group Sequential Methods with Applications to Clinical Trials (2000), sec. 8.4 and 8.5"
 * @see "A. A. Tsiatis, G. L. Rosner, C. R. Mehta, Exact confidence intervals following a group sequential test, Biometrics 40 (1984) 797-803"
 */
public record StagewiseInference(double p, double median, ConfidenceInterval interval) {
    /**
     * The inference from the look at which the study stopped.
     *
     * <p>The drift {@code d} that puts the result at a probability is turned into a log change with the t distribution of the estimate,
     * {@code estimate - se T^-1(Phi(z - d sqrt(t)))}, so that a study that stops at its first look gets its plain t interval.
     *
     * @param boundary two-sided bounds up to and with that look
     * @param estimate the plain estimate at that look
     * @param level of the interval, in (0, 1)
     * @throws IllegalArgumentException if the bounds are one-sided, the level is out of range or the estimate has no noise
     */
    public static StagewiseInference of(SequentialBoundary boundary, Estimate estimate, double level) {
        ConfidenceInterval.requireLevel(level);
        Argument.positive("standard error", estimate.standardError());
        if (boundary.tail() != Tail.TWO) {
            throw new IllegalArgumentException("stagewise inference needs two-sided bounds");
        }
        double z = deviate(estimate);
        double up = atLeastAsFarUp(boundary, z, 0);
        double low = change(boundary, estimate, z, (1 - level) / 2);
        double high = change(boundary, estimate, z, (1 + level) / 2);
        return new StagewiseInference(Math.min(1, 2 * Math.min(up, 1 - up)), change(boundary, estimate, z, 0.5), new ConfidenceInterval(level, low, high));
    }

    /** The normal deviate with the tail of the estimate's t. */
    public static double deviate(Estimate estimate) {
        double size = Normal.upperPoint(StudentT.survival(Math.abs(estimate.t()), estimate.degreesOfFreedom()));
        return Math.copySign(Math.min(size, 37), estimate.t()); // farther out, a tail underflows
    }

    private static double change(SequentialBoundary boundary, Estimate estimate, double z, double probability) {
        double root = Math.sqrt(boundary.fraction(boundary.looks() - 1));
        double guess = (z - Normal.upperPoint(probability)) / root;
        double drift = Root.ofRising(d -> atLeastAsFarUp(boundary, z, d) - probability, guess, 0.5);
        double rest = z - drift * root;
        double t = rest > 0 ? StudentT.upperPoint(Normal.survival(rest), estimate.degreesOfFreedom())
                : -StudentT.upperPoint(Normal.survival(-rest), estimate.degreesOfFreedom());
        return estimate.logDifference() - estimate.standardError() * t;
    }

    /** Probability of a result at least as far up: stopped above earlier, or not stopped and at or above the deviate at the last look. */
    static double atLeastAsFarUp(SequentialBoundary boundary, double z, double drift) {
        Walk walk = Walk.begin(drift, boundary.fractions());
        double sum = 0;
        int last = boundary.looks() - 1;
        for (int k = 0; k < last; k++) {
            sum += walk.above(boundary.fraction(k), boundary.score(k));
            walk = walk.goOn(boundary.fraction(k), boundary.lowestScore(k), boundary.score(k));
        }
        return sum + walk.above(boundary.fraction(last), z * Math.sqrt(boundary.fraction(last)));
    }
}
