package coldproof.physics;

import java.util.Arrays;
import java.util.OptionalDouble;

/** Part of a record between two shares of its span, and the least-squares exponential through it. */
final class ExponentialWindow {
    /**
     * Result of one fit.
     *
     * @param tau time constant, s
     * @param standardError of tau, s
     * @param surroundings °C
     * @param rSquared share of the variation explained
     * @param atEdge whether the best tau lies at an end of the search range
     */
    record Fit(double tau, double standardError, double surroundings, double rSquared, boolean atEdge) {}

    private static final int GRID = 120;
    private static final int GOLDEN_STEPS = 80;
    private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;

    private final double[] t;
    private final double[] y;

    private ExponentialWindow(double[] t, double[] y) {
        this.t = t;
        this.y = y;
    }

    /** The readings whose temperature lies between two shares of the way from the first to the last. */
    static ExponentialWindow of(double[] seconds, double[] celsius, double first, double last, double fromShare, double toShare) {
        double[] t = new double[seconds.length];
        double[] y = new double[seconds.length];
        int n = 0;
        for (int i = 0; i < seconds.length; i++) {
            double share = (celsius[i] - first) / (last - first);
            if (share >= fromShare && share <= toShare) {
                t[n] = seconds[i] - seconds[0];
                y[n++] = celsius[i];
            }
        }
        return new ExponentialWindow(Arrays.copyOf(t, n), Arrays.copyOf(y, n));
    }

    int size() {
        return t.length;
    }

    Fit fit(OptionalDouble surroundings) {
        double duration = t[t.length - 1] - t[0];
        double low = Math.log(duration / 50);
        double high = Math.log(duration * 20);
        double best = low;
        double bestSum = Double.POSITIVE_INFINITY;
        for (int i = 0; i <= GRID; i++) {
            double logTau = low + (high - low) * i / GRID;
            double sum = linear(Math.exp(logTau), surroundings).sum();
            if (sum < bestSum) {
                bestSum = sum;
                best = logTau;
            }
        }
        double step = (high - low) / GRID;
        double tau = Math.exp(golden(best - step, best + step, surroundings));
        boolean atEdge = best <= low || best >= high;
        Linear solution = linear(tau, surroundings);
        return new Fit(tau, standardError(tau, solution, surroundings.isPresent()), solution.surroundings,
                1 - solution.sum / totalSum(), atEdge);
    }

    /** The golden-section search for the smallest sum of squares over the logarithm of tau. */
    private double golden(double low, double high, OptionalDouble surroundings) {
        double a = low;
        double b = high;
        for (int i = 0; i < GOLDEN_STEPS; i++) {
            double c = b - GOLDEN * (b - a);
            double d = a + GOLDEN * (b - a);
            if (linear(Math.exp(c), surroundings).sum < linear(Math.exp(d), surroundings).sum) {
                b = d;
            } else {
                a = c;
            }
        }
        return (a + b) / 2;
    }

    private record Linear(double surroundings, double amplitude, double sum) {}

    private Linear linear(double tau, OptionalDouble surroundings) {
        double se = 0;
        double see = 0;
        double sy = 0;
        double sey = 0;
        double origin = y[0]; // sums about the first reading lose no digits
        for (int i = 0; i < t.length; i++) {
            double e = Math.exp(-(t[i] - t[0]) / tau);
            se += e;
            see += e * e;
            sy += y[i] - origin;
            sey += e * (y[i] - origin);
        }
        int n = t.length;
        double s;
        double amplitude;
        if (surroundings.isPresent()) {
            s = surroundings.getAsDouble() - origin;
            amplitude = (sey - s * se) / see;
        } else {
            double determinant = n * see - se * se;
            amplitude = (n * sey - se * sy) / determinant;
            s = (sy - amplitude * se) / n;
        }
        double sum = 0;
        for (int i = 0; i < n; i++) {
            double residual = y[i] - origin - s - amplitude * Math.exp(-(t[i] - t[0]) / tau);
            sum += residual * residual;
        }
        return new Linear(s + origin, amplitude, sum);
    }

    private double totalSum() {
        double mean = Arrays.stream(y).average().orElseThrow();
        return Arrays.stream(y).map(value -> (value - mean) * (value - mean)).sum();
    }

    /**
     * Standard error of tau: the residual variance times the (tau, tau) element of the inverse of J'J, where the columns of J are the
     * derivatives by tau, amplitude and, when fitted, surroundings. Taking the tau column's part orthogonal to the others gives that
     * element without an inverse.
     */
    private double standardError(double tau, Linear solution, boolean surroundingsKnown) {
        int n = t.length;
        double[] byTau = new double[n];
        double[] byAmplitude = new double[n];
        double[] residuals = new double[n];
        for (int i = 0; i < n; i++) {
            double elapsed = t[i] - t[0];
            double e = Math.exp(-elapsed / tau);
            byAmplitude[i] = e;
            byTau[i] = solution.amplitude * e * elapsed / (tau * tau);
            residuals[i] = y[i] - solution.surroundings - solution.amplitude * e;
        }
        if (!surroundingsKnown) {
            removeMean(byTau);
            removeMean(byAmplitude);
        }
        double along = dot(byTau, byAmplitude) / dot(byAmplitude, byAmplitude);
        for (int i = 0; i < n; i++) {
            byTau[i] -= along * byAmplitude[i];
        }
        int parameters = surroundingsKnown ? 2 : 3;
        double variance = dot(residuals, residuals) / (n - parameters);
        double r = Math.min(0.99, Math.max(0, lagOne(residuals)));
        return Math.sqrt(variance / dot(byTau, byTau) * (1 + r) / (1 - r));
    }

    private static void removeMean(double[] values) {
        double mean = Arrays.stream(values).average().orElseThrow();
        for (int i = 0; i < values.length; i++) {
            values[i] -= mean;
        }
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }

    private static double lagOne(double[] residuals) {
        double sum = 0;
        for (int i = 1; i < residuals.length; i++) {
            sum += residuals[i] * residuals[i - 1];
        }
        double all = dot(residuals, residuals);
        return all > 0 ? sum / all : 0;
    }
}
