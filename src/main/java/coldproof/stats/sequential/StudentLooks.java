package coldproof.stats.sequential;

import coldproof.stats.Argument;
import coldproof.stats.Tail;
import coldproof.stats.distribution.StudentT;
import java.util.Arrays;
import java.util.random.RandomGenerator.SplittableGenerator;

/**
 * The bounds of a small study, whose noise is estimated anew at each look.
 *
 * <p>Holding a t test's p against the nominal p of a normal bound is right at the first look only: later the error rate comes out a little high (5.2 to
 * 5.7 % for a nominal 5 % with a handful of units). Here the later nominal p values are found by simulating the study itself, many times without any
 * effect: a look may stop as many studies in all as the normal bounds would stop of the same studies if their noise were known. What is drawn are
 * the estimate's path and its sum of squares; of the new degrees of freedom at a look one is the contrast of the old estimate with the new part's.
 *
 * @see "D. Rom, J. A. McTague, Exact critical values for group sequential designs with small sample sizes, Journal of Biopharmaceutical Statistics 30
 *     (2020) 752-764, for the size of the error"
 */
public final class StudentLooks {
    private static final int STUDIES = 400_000;
    private static final int FEWEST_STOPS = 400; // fewer leave the simulated bound noisier than the normal one is wrong
    private static final double MANY = 400; // degrees of freedom from which on the error rate is 5.0 % in any case

    private final SequentialBoundary boundary;
    private final double[] degreesOfFreedom;
    private final double[] score = new double[STUDIES];
    private final double[] squares = new double[STUDIES];
    private final boolean[] stopped = new boolean[STUDIES];
    private final boolean[] stoppedIfKnown = new boolean[STUDIES];

    private StudentLooks(SequentialBoundary boundary, double[] degreesOfFreedom) {
        this.boundary = boundary;
        this.degreesOfFreedom = degreesOfFreedom;
    }

    /**
     * The two-sided p values that the t tests of the looks must reach.
     *
     * @param boundary two-sided bounds of the looks
     * @param degreesOfFreedom of the noise at each look, above 0, rising or equal
     * @param chance one generator is split off for each look, so that a look's p does not depend on looks to come
     * @throws IllegalArgumentException if counts differ, bounds are one-sided or degrees of freedom out of range
     */
    public static double[] nominalP(SequentialBoundary boundary, double[] degreesOfFreedom, SplittableGenerator chance) {
        if (degreesOfFreedom.length != boundary.looks() || boundary.tail() != Tail.TWO) {
            throw new IllegalArgumentException(degreesOfFreedom.length + " degrees of freedom for " + boundary.looks() + " looks, " + boundary.tail() + " tails");
        }
        double before = 0;
        for (double each : degreesOfFreedom) {
            Argument.within("degrees of freedom", each, Math.max(before, Double.MIN_NORMAL), Double.POSITIVE_INFINITY);
            before = each;
        }
        if (degreesOfFreedom.length == 1 || before >= MANY) {
            double[] p = new double[boundary.looks()];
            Arrays.setAll(p, boundary::nominalP);
            return p;
        }
        return new StudentLooks(boundary, degreesOfFreedom.clone()).simulate(chance);
    }

    private double[] simulate(SplittableGenerator chance) {
        double[] p = new double[boundary.looks()];
        int known = 0;
        int found = 0;
        for (int look = 0; look < p.length; look++) {
            advance(look, chance.split());
            known += stopKnown(look);
            double bound = bound(look, known - found);
            p[look] = bound > 0 ? StudentT.twoSidedP(bound, degreesOfFreedom[look]) : boundary.nominalP(look);
            found += stop(look, bound > 0 ? bound : StudentT.upperPoint(p[look] / 2, degreesOfFreedom[look]));
        }
        return p;
    }

    /** Draws what comes in until a look. */
    private void advance(int look, SplittableGenerator chance) {
        double time = look == 0 ? 0 : boundary.fraction(look - 1);
        double step = boundary.fraction(look) - time;
        double df = degreesOfFreedom[look] - (look == 0 ? 0 : degreesOfFreedom[look - 1]);
        boolean contrast = look > 0 && df >= 1;
        ChiSquareDraws draws = new ChiSquareDraws(contrast ? df - 1 : df);
        double root = Math.sqrt(step);
        double contrastVariance = look == 0 ? 1 : 1 / step + 1 / time;
        for (int i = 0; i < STUDIES; i++) {
            double gain = root * chance.nextGaussian();
            double squared = draws.next(chance);
            if (contrast) {
                double apart = gain / step - score[i] / time;
                squared += apart * apart / contrastVariance;
            }
            score[i] += gain;
            squares[i] += squared;
        }
    }

    private int stopKnown(int look) {
        double bound = boundary.score(look);
        int count = 0;
        for (int i = 0; i < STUDIES; i++) {
            if (!stoppedIfKnown[i] && Math.abs(score[i]) >= bound) {
                stoppedIfKnown[i] = true;
                count++;
            }
        }
        return count;
    }

    private double t(int i, int look) {
        return Math.abs(score[i]) / Math.sqrt(boundary.fraction(look) * squares[i] / degreesOfFreedom[look]);
    }

    /** The t beyond which so many of the studies still going lie; 0 at the first look, where t is exact, and where they are too few to tell. */
    private double bound(int look, int stops) {
        if (look == 0 || stops < FEWEST_STOPS) {
            return 0;
        }
        double[] going = new double[STUDIES];
        int count = 0;
        for (int i = 0; i < STUDIES; i++) {
            if (!stopped[i]) {
                going[count++] = t(i, look);
            }
        }
        Arrays.sort(going, 0, count);
        return 0.5 * (going[count - stops] + going[count - stops - 1]);
    }

    private int stop(int look, double bound) {
        int count = 0;
        for (int i = 0; i < STUDIES; i++) {
            if (!stopped[i] && t(i, look) >= bound) {
                stopped[i] = true;
                count++;
            }
        }
        return count;
    }
}
