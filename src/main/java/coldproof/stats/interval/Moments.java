package coldproof.stats.interval;

/**
 * Count, mean and spread of a sample, computed in two corrected passes so that a large common offset costs no digits.
 *
 * @param count how many values, 1 or more
 * @param mean their arithmetic mean
 * @param sumOfSquares sum of squared distances from the mean, 0 or more
 */
public record Moments(int count, double mean, double sumOfSquares) {
    /**
     * Moments of a sample. The mean of a first pass is corrected by the mean of what it leaves, and the sum of squares by the square of
     * what that leaves (T. F. Chan, G. H. Golub, R. J. LeVeque, The American Statistician 37 (1983) 242-247, the corrected two-pass algorithm).
     *
     * @param values one or more finite values
     * @throws IllegalArgumentException if there is none, or one is NaN or infinite
     */
    public static Moments of(double[] values) {
        if (values.length == 0) {
            throw new IllegalArgumentException("no value: a mean needs one or more");
        }
        double sum = 0;
        for (double value : values) {
            sum += value;
        }
        double rough = sum / values.length;
        if (!Double.isFinite(rough)) {
            throw new IllegalArgumentException("the values hold NaN or infinity, or their sum overflows");
        }
        double left = 0;
        for (double value : values) {
            left += value - rough;
        }
        double mean = rough + left / values.length;
        double squares = 0;
        double rest = 0;
        for (double value : values) {
            double distance = value - mean;
            squares += distance * distance;
            rest += distance;
        }
        return new Moments(values.length, mean, Math.max(0, squares - rest * rest / values.length));
    }

    /**
     * Sample variance with divisor {@code count - 1}.
     *
     * @throws IllegalArgumentException if there is only one value
     */
    public double variance() {
        if (count < 2) {
            throw new IllegalArgumentException("a variance needs 2 or more values, not " + count);
        }
        return sumOfSquares / (count - 1);
    }

    /**
     * Standard error of the mean of independent values, {@code sqrt(variance / count)}.
     *
     * @throws IllegalArgumentException if there is only one value
     */
    public double standardError() {
        return Math.sqrt(variance() / count);
    }

    /** Square root of {@link #variance()}. */
    public double standardDeviation() {
        return Math.sqrt(variance());
    }
}
