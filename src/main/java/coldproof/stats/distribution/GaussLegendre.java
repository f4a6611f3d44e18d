package coldproof.stats.distribution;

import java.util.function.DoubleUnaryOperator;

/**
 * Gauss-Legendre quadrature: exact for polynomials of degree {@code 2 n - 1}. Immutable.
 *
 * <p>Nodes are roots of the Legendre polynomial, found by Newton's method from the usual cosine start; weights are
 * {@code 2 / ((1 - x^2) P'(x)^2)} (M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions, 25.4.29).
 */
public final class GaussLegendre {
    private final double[] nodes;
    private final double[] weights;

    private GaussLegendre(double[] nodes, double[] weights) {
        this.nodes = nodes;
        this.weights = weights;
    }

    private static final class Few {
        static final GaussLegendre RULE = ofOrder(24);
    }

    private static final class Some {
        static final GaussLegendre RULE = ofOrder(36);
    }

    private static final class More {
        static final GaussLegendre RULE = ofOrder(48);
    }

    private static final class Most {
        static final GaussLegendre RULE = ofOrder(64);
    }

    /**
     * A rule with at least so many nodes, up to 64: one of four that are computed at first use and kept.
     *
     * @param leastOrder number of nodes wanted; more than 64 get 64
     */
    public static GaussLegendre atLeast(int leastOrder) {
        if (leastOrder <= 36) {
            return leastOrder <= 24 ? Few.RULE : Some.RULE;
        }
        return leastOrder <= 48 ? More.RULE : Most.RULE;
    }

    /**
     * A new rule.
     *
     * @param order number of nodes, 2 to 200
     * @throws IllegalArgumentException if the order is outside that range
     */
    public static GaussLegendre ofOrder(int order) {
        if (order < 2 || order > 200) {
            throw new IllegalArgumentException("order " + order + " of the quadrature is outside [2, 200]");
        }
        double[] nodes = new double[order];
        double[] weights = new double[order];
        for (int i = 0; i < (order + 1) / 2; i++) {
            double x = Math.cos(Math.PI * (i + 0.75) / (order + 0.5));
            double slope = 1;
            double step = 1;
            for (int round = 0; round < 100 && Math.abs(step) > 1e-16; round++) {
                double before = 1;
                double value = x;
                for (int k = 2; k <= order; k++) {
                    double next = ((2 * k - 1) * x * value - (k - 1) * before) / k;
                    before = value;
                    value = next;
                }
                slope = order * (x * value - before) / (x * x - 1);
                step = value / slope;
                x -= step;
            }
            nodes[i] = -x;
            nodes[order - 1 - i] = x;
            weights[i] = 2 / ((1 - x * x) * slope * slope);
            weights[order - 1 - i] = weights[i];
        }
        return new GaussLegendre(nodes, weights);
    }

    /** Number of nodes. */
    public int order() {
        return nodes.length;
    }

    /** Node {@code i} in (-1, 1), ascending. */
    public double node(int i) {
        return nodes[i];
    }

    /** Weight of node {@code i}; the weights add up to 2. */
    public double weight(int i) {
        return weights[i];
    }

    /** Integral of the function from {@code from} to {@code to}. */
    public double integrate(DoubleUnaryOperator function, double from, double to) {
        double half = 0.5 * (to - from);
        double middle = 0.5 * (to + from);
        double sum = 0;
        for (int i = 0; i < nodes.length; i++) {
            sum += weights[i] * function.applyAsDouble(middle + half * nodes[i]);
        }
        return half * sum;
    }
}
