package coldproof.stats.series;

import coldproof.stats.Argument;
import coldproof.stats.interval.Moments;

/**
 * The least-squares line {@code y = intercept + slope x} through points, {@code slope = sum (x - mx)(y - my) / sum (x - mx)^2}.
 *
 * @param slope per unit of x
 * @param intercept at x = 0
 * @param residualSquares sum of squared distances of y from the line, 0 or more
 * @param spread sum of squared distances of x from its mean, above 0
 * @param count how many points
 */
public record StraightLine(double slope, double intercept, double residualSquares, double spread, int count) {
    /**
     * Fits points.
     *
     * @param x two or more finite places, not all equal
     * @param y as many finite values
     * @throws IllegalArgumentException if there are fewer, not as many, one is not finite, or all places are equal
     */
    public static StraightLine of(double[] x, double[] y) {
        int n = Argument.atLeast("number of places", x.length, 2);
        if (y.length != n) {
            throw new IllegalArgumentException(n + " places, but " + y.length + " values");
        }
        Moments places = Moments.of(x);
        Moments values = Moments.of(y);
        double spread = Argument.positive("spread of the places", places.sumOfSquares());
        double products = 0;
        for (int i = 0; i < n; i++) {
            products += (x[i] - places.mean()) * (y[i] - values.mean());
        }
        double slope = products / spread;
        double squares = 0;
        for (int i = 0; i < n; i++) {
            double left = y[i] - values.mean() - slope * (x[i] - places.mean());
            squares += left * left;
        }
        return new StraightLine(slope, values.mean() - slope * places.mean(), squares, spread, n);
    }

    /**
     * Standard error of the slope, {@code sqrt(residual squares / (n - 2) / spread)}, on n - 2 degrees of freedom.
     *
     * @throws IllegalArgumentException if there are only two points
     */
    public double slopeError() {
        return Math.sqrt(residualSquares / (Argument.atLeast("number of points", count, 3) - 2) / spread);
    }
}
