package coldproof.stats.sequential;

import coldproof.stats.Argument;
import coldproof.stats.Tail;
import coldproof.stats.distribution.Normal;
import coldproof.stats.distribution.Root;

/**
 * How far out a result must lie at each look for the study to stop. The bounds follow from the looks actually taken: a look spends what the
 * {@link Spending} allows at its information and the earlier looks have not spent. Immutable.
 *
 * <p>Two-sided bounds are symmetric, both absorb, and each side spends half. Stopping for futility is not part of the account (it is non-binding):
 * who goes on in spite of it still has the false-alarm rate.
 *
 * @see "C. Jennison, B. W. Turnbull, Group Sequential Methods with Applications to Clinical Trials (2000), ch. 7 and 19"
 */
public final class SequentialBoundary {
    private final Tail tail;
    private final double[] fractions;
    private final double[] z;
    private final double[] spent;

    private SequentialBoundary(Tail tail, double[] fractions, double[] z, double[] spent) {
        this.tail = tail;
        this.fractions = fractions;
        this.z = z;
        this.spent = spent;
    }

    /**
     * Bounds that spend a false-alarm rate.
     *
     * @param spending how it is given out
     * @param falseAlarm of the whole study, both sides together where two-sided, in (0, 0.5]
     * @param tail which results count
     * @param fractions share of the whole study's information at each look, rising, in (0, 1]; those yet to come may be left out
     * @throws IllegalArgumentException if an argument is out of range or NaN
     */
    public static SequentialBoundary spending(Spending spending, double falseAlarm, Tail tail, double... fractions) {
        requireRising(fractions);
        double perSide = tail.perSide(falseAlarm);
        double[] z = new double[fractions.length];
        double[] spent = new double[fractions.length];
        Walk walk = Walk.begin(0, fractions);
        double before = 0;
        for (int k = 0; k < z.length; k++) {
            double allowed = spending.spent(fractions[k], perSide);
            z[k] = bound(walk, fractions[k], allowed - before, k == 0);
            spent[k] = tail == Tail.TWO ? 2 * allowed : allowed;
            before = allowed;
            walk = walk.goOn(fractions[k], lowest(tail, z[k], fractions[k]), z[k] * Math.sqrt(fractions[k]));
        }
        return new SequentialBoundary(tail, fractions.clone(), z, spent);
    }

    /**
     * Given bounds, with what they spend.
     *
     * @param z normal deviates, one for each look, finite
     * @throws IllegalArgumentException if counts differ or an argument is out of range or NaN
     */
    public static SequentialBoundary of(double[] z, Tail tail, double... fractions) {
        requireRising(fractions);
        if (z.length != fractions.length) {
            throw new IllegalArgumentException(z.length + " bounds for " + fractions.length + " looks");
        }
        SequentialBoundary bare = new SequentialBoundary(tail, fractions.clone(), z.clone(), new double[z.length]);
        double sum = 0;
        double[] up = bare.crossedAbove(0);
        for (int k = 0; k < z.length; k++) {
            Argument.finite("bound", z[k]);
            sum += tail == Tail.TWO ? 2 * up[k] : up[k];
            bare.spent[k] = sum;
        }
        return bare;
    }

    private static double bound(Walk walk, double fraction, double toSpend, boolean first) {
        if (toSpend < 1e-300) { // nothing that a double could tell from never
            return Double.POSITIVE_INFINITY;
        }
        double alone = Normal.upperPoint(toSpend);
        if (first) {
            return alone;
        }
        double root = Math.sqrt(fraction);
        double logSpend = Math.log(toSpend);
        return Root.ofRising(z -> logSpend - Math.log(walk.above(fraction, z * root)), alone, 0.25);
    }

    private static double lowest(Tail tail, double z, double fraction) {
        return tail == Tail.TWO ? -z * Math.sqrt(fraction) : Double.NEGATIVE_INFINITY;
    }

    private static void requireRising(double[] fractions) {
        Argument.atLeast("number of looks", fractions.length, 1);
        double before = 0;
        for (double fraction : fractions) {
            if (!(fraction > before && fraction <= 1)) {
                throw new IllegalArgumentException("information fraction " + fraction + " is not in (" + before + ", 1]");
            }
            before = fraction;
        }
    }

    /** How many looks. */
    public int looks() {
        return z.length;
    }

    /** Which results count. */
    public Tail tail() {
        return tail;
    }

    /** Share of the whole study's information at a look, first is 0. */
    public double fraction(int look) {
        return fractions[look];
    }

    /** The bound of a look as a normal deviate; infinite where the look cannot stop the study. */
    public double z(int look) {
        return z[look];
    }

    /** The p value that a test at this look must reach, two-sided where the bounds are; for a t test it is this p that counts, not the deviate. */
    public double nominalP(int look) {
        double p = Normal.survival(z[look]);
        return tail == Tail.TWO ? 2 * p : p;
    }

    /** False-alarm probability spent up to and with a look, both sides together. */
    public double spent(int look) {
        return spent[look];
    }

    double[] fractions() {
        return fractions.clone();
    }

    double score(int look) {
        return z[look] * Math.sqrt(fractions[look]);
    }

    double lowestScore(int look) {
        return lowest(tail, z[look], fractions[look]);
    }

    /** Probability of stopping above the upper bound at each look, with a drift. */
    double[] crossedAbove(double drift) {
        double[] crossed = new double[z.length];
        Walk walk = Walk.begin(drift, fractions);
        for (int k = 0; k < z.length; k++) {
            crossed[k] = walk.above(fractions[k], score(k));
            walk = walk.goOn(fractions[k], lowestScore(k), score(k));
        }
        return crossed;
    }

    /** Probability of stopping at each look on either side, with a drift. */
    public double[] stopped(double drift) {
        double[] stopped = crossedAbove(drift);
        if (tail == Tail.TWO) {
            double[] below = crossedAbove(-drift);
            for (int k = 0; k < stopped.length; k++) {
                stopped[k] += below[k];
            }
        }
        return stopped;
    }
}
