package coldproof.trace;

import java.util.Optional;

/** Computes {@link Level}s. */
final class LevelFinder {
    private static final double BLOCK = 5; // s

    private LevelFinder() {}

    /** Level of a channel over the entries [from, to); empty when it has no number there. */
    static Optional<Level> of(Series series, Channel channel, int from, int to) {
        double[] x = new double[Math.max(0, to - from)];
        double[] y = new double[x.length];
        int n = 0;
        for (int i = from; i < to; i++) {
            double value = series.value(channel, i);
            if (!Double.isNaN(value)) {
                x[n] = series.seconds(i);
                y[n++] = value;
            }
        }
        return n == 0 ? Optional.empty() : Optional.of(of(x, y, n));
    }

    private static Level of(double[] x, double[] y, int n) {
        double meanX = mean(x, n);
        double meanY = mean(y, n);
        double sxx = 0;
        double sxy = 0;
        for (int i = 0; i < n; i++) {
            sxx += (x[i] - meanX) * (x[i] - meanX);
            sxy += (x[i] - meanX) * (y[i] - meanY);
        }
        double slope = n > 2 && sxx > 0 ? sxy / sxx : 0;
        double[] rest = new double[n];
        double squares = 0;
        double products = 0;
        for (int i = 0; i < n; i++) {
            rest[i] = y[i] - meanY - slope * (x[i] - meanX);
            squares += rest[i] * rest[i];
            products += i > 0 ? rest[i] * rest[i - 1] : 0;
        }
        double scatter = n > 2 ? Math.sqrt(squares / (n - 2)) : Double.NaN;
        double autocorrelation = squares > 0 ? Math.max(-1, Math.min(1, products / squares)) : 0;
        double used = Math.max(0, Math.min(0.99, autocorrelation)); // a negative value never narrows an interval
        double effective = n * (1 - used) / (1 + used);
        double error = n > 2 ? scatter / Math.sqrt(Math.max(1, effective)) : Double.NaN;
        return new Level(meanY, error, scatter, wander(x, rest, n), 60 * slope, autocorrelation, effective);
    }

    /**
     * Scatter of block means less the share of quick noise in them. Quick noise is taken from second differences, which do not see slow
     * movements: for white noise the variance of {@code y[i-1] - 2 y[i] + y[i+1]} is six times that of the noise.
     */
    private static double wander(double[] x, double[] rest, int n) {
        if (n < 6) {
            return Double.NaN;
        }
        double quick = 0;
        for (int i = 1; i + 1 < n; i++) {
            double second = rest[i - 1] - 2 * rest[i] + rest[i + 1];
            quick += second * second / 6;
        }
        quick /= n - 2;
        double squares = 0;
        int blocks = 0;
        double perBlock = 0;
        int i = 0;
        while (i < n) {
            int first = i;
            double sum = 0;
            while (i < n && x[i] - x[first] < BLOCK) {
                sum += rest[i++];
            }
            double mean = sum / (i - first);
            squares += mean * mean;
            perBlock += 1.0 / (i - first);
            blocks++;
        }
        return Math.sqrt(Math.max(0, squares / blocks - quick * perBlock / blocks));
    }

    private static double mean(double[] values, int n) {
        double sum = 0;
        for (int i = 0; i < n; i++) {
            sum += values[i];
        }
        return sum / n;
    }
}
