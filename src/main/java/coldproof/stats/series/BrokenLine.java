package coldproof.stats.series;

import java.util.Arrays;

/**
 * Two straight lines that meet: {@code y = intercept + before x + (after - before) max(0, x - breakpoint)}, by least squares over every
 * breakpoint, exactly: between two neighbouring places the best breakpoint is where the separately fitted lines meet, or at a place.
 *
 * @param breakpoint where the lines meet
 * @param intercept value of the first line at x = 0
 * @param slopeBefore slope of the first line
 * @param slopeAfter slope of the second
 * @param residualSquares sum of squared residuals
 */
public record BrokenLine(double breakpoint, double intercept, double slopeBefore, double slopeAfter, double residualSquares) {
    private static final int FEWEST = 3; // places on either side

    /**
     * The best broken line.
     *
     * @param x rising strictly, seven or more
     * @param y as many
     * @throws IllegalArgumentException if there are too few
     */
    public static BrokenLine of(double[] x, double[] y) {
        int n = x.length;
        if (n < 2 * FEWEST + 1 || y.length != n) {
            throw new IllegalArgumentException(n + " places and " + y.length + " values: seven or more are needed");
        }
        BrokenLine best = null;
        for (int i = FEWEST - 1; i + FEWEST < n; i++) {
            double[] left = line(Arrays.copyOfRange(x, 0, i + 1), Arrays.copyOfRange(y, 0, i + 1));
            double[] right = line(Arrays.copyOfRange(x, i + 1, n), Arrays.copyOfRange(y, i + 1, n));
            double meeting = (right[0] - left[0]) / (left[1] - right[1]);
            BrokenLine candidate = meeting > x[i] && meeting < x[i + 1]
                    ? new BrokenLine(meeting, left[0], left[1], right[1], left[2] + right[2]) : through(x, y, x[i]);
            best = best == null || candidate.residualSquares < best.residualSquares ? candidate : best;
        }
        return best;
    }

    private static double[] line(double[] x, double[] y) {
        int n = x.length;
        double meanX = Arrays.stream(x).sum() / n;
        double meanY = Arrays.stream(y).sum() / n;
        double sxx = 0;
        double sxy = 0;
        double syy = 0;
        for (int i = 0; i < n; i++) {
            sxx += (x[i] - meanX) * (x[i] - meanX);
            sxy += (x[i] - meanX) * (y[i] - meanY);
            syy += (y[i] - meanY) * (y[i] - meanY);
        }
        double slope = sxy / sxx;
        return new double[] {meanY - slope * meanX, slope, Math.max(0, syy - slope * sxy)};
    }

    /** The best pair of lines that meet at a given place: linear least squares in intercept and two slopes. */
    private static BrokenLine through(double[] x, double[] y, double at) {
        LeastSquares.Curve curve = (place, parameters, slopes) -> {
            slopes[0] = 1;
            slopes[1] = Math.min(0, place - at);
            slopes[2] = Math.max(0, place - at);
            return parameters[0] + parameters[1] * slopes[1] + parameters[2] * slopes[2];
        };
        LeastSquares.Fit fit = LeastSquares.of(curve, x, y, new double[3]).orElseThrow(() -> new IllegalStateException("linear least squares did not come to a stand"));
        double[] found = fit.parameters();
        return new BrokenLine(at, found[0] - found[1] * at, found[1], found[2], fit.residualSquares());
    }
}
