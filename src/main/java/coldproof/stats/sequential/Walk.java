package coldproof.stats.sequential;

import coldproof.stats.distribution.GaussLegendre;
import coldproof.stats.distribution.Normal;

/**
 * A study under way: the density of its score over the places from which it goes on. The score at information {@code t} is
 * {@code B(t) = Z(t) sqrt(t)}, a Brownian motion with drift, seen at looks only. Immutable.
 *
 * <p>The density after a look is that before it carried on by one normal step and cut at the bounds, held at the nodes of Gauss-Legendre pieces
 * that are narrow against the steps; every probability is then a sum of positive terms. Tested to 1e-10.
 *
 * @see "P. Armitage, C. K. McPherson, B. C. Rowe, Repeated significance tests on accumulating data, JRSS A 132 (1969) 235-244"
 */
final class Walk {
    private static final double REACH = 9.5; // standard deviations: 1e-21 lies beyond
    private static final double PIECE = 5; // width of a piece in steps: 24 nodes then resolve the density of a step to 1e-12
    private static final GaussLegendre RULE = GaussLegendre.atLeast(24);

    private final double drift;
    private final double finestStep;
    private final double time;
    private final double[] place;
    private final double[] mass; // density times weight

    private Walk(double drift, double finestStep, double time, double[] place, double[] mass) {
        this.drift = drift;
        this.finestStep = finestStep;
        this.time = time;
        this.place = place;
        this.mass = mass;
    }

    /** A walk that stands at a known place. */
    static Walk from(double time, double place, double drift, double[] laterTimes) {
        double finest = Double.POSITIVE_INFINITY;
        double before = time;
        for (double later : laterTimes) {
            finest = Math.min(finest, Math.sqrt(later - before));
            before = later;
        }
        return new Walk(drift, finest, time, new double[] {place}, new double[] {1});
    }

    /** A walk at its beginning, to be seen at these times. */
    static Walk begin(double drift, double[] times) {
        return from(0, 0, drift, times);
    }

    /** Probability that it has gone on until now and is above a place at a later time. */
    double above(double later, double bound) {
        double step = Math.sqrt(later - time);
        double sum = 0;
        for (int i = 0; i < place.length; i++) {
            sum += mass[i] * Normal.survival((bound - place[i] - drift * (later - time)) / step);
        }
        return sum;
    }

    /** The walk after a look: it goes on from between the bounds, either of which may be infinite. */
    Walk goOn(double later, double low, double high) {
        double step = Math.sqrt(later - time);
        double shift = drift * (later - time);
        double from = Math.max(low, place[0] + shift - REACH * step);
        double to = Math.min(high, place[place.length - 1] + shift + REACH * step);
        if (!(from < to)) {
            return new Walk(drift, finestStep, later, new double[] {Math.max(low, Math.min(high, 0))}, new double[] {0});
        }
        int pieces = (int) Math.ceil((to - from) / (PIECE * finestStep));
        double half = 0.5 * (to - from) / pieces;
        double[] places = new double[pieces * RULE.order()];
        double[] masses = new double[places.length];
        for (int piece = 0, at = 0; piece < pieces; piece++) {
            double middle = from + (2 * piece + 1) * half;
            for (int i = 0; i < RULE.order(); i++, at++) {
                places[at] = middle + half * RULE.node(i);
                masses[at] = half * RULE.weight(i) * density(places[at] - shift, step);
            }
        }
        return new Walk(drift, finestStep, later, places, masses);
    }

    private double density(double there, double step) {
        double sum = 0;
        for (int i = 0; i < place.length; i++) {
            sum += mass[i] * Normal.density((there - place[i]) / step);
        }
        return sum / step;
    }
}
