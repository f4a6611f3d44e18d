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
            StraightLine left = StraightLine.of(Arrays.copyOfRange(x, 0, i + 1), Arrays.copyOfRange(y, 0, i + 1));
            StraightLine right = StraightLine.of(Arrays.copyOfRange(x, i + 1, n), Arrays.copyOfRange(y, i + 1, n));
            double meeting = (right.intercept() - left.intercept()) / (left.slope() - right.slope());
            BrokenLine candidate = meeting > x[i] && meeting < x[i + 1]
                    ? new BrokenLine(meeting, left.intercept(), left.slope(), right.slope(), left.residualSquares() + right.residualSquares())
                    : through(x, y, x[i]);
            best = best == null || candidate.residualSquares < best.residualSquares ? candidate : best;
        }
        return best;
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
