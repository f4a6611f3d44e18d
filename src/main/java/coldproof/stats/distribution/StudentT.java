package coldproof.stats.distribution;

import coldproof.stats.Argument;

/**
 * Student's t distribution with any positive degrees of freedom, whole or not; infinite degrees of freedom give the normal distribution.
 *
 * <p>Tails are {@code I_{df/(df + t^2)}(df/2, 1/2) / 2} (M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions, 26.7.1), taken
 * from the side on which nothing cancels; points by a third-order iteration on the logarithm of the tail. Tested to 1e-13 relative.
 */
public final class StudentT {
    private StudentT() {}

    /**
     * Density at {@code t}.
     *
     * @param t any number
     * @param degreesOfFreedom above 0, infinity allowed
     * @throws IllegalArgumentException if an argument is out of range or NaN
     */
    public static double density(double t, double degreesOfFreedom) {
        Argument.number("t", t);
        Argument.degreesOfFreedom(degreesOfFreedom);
        return degreesOfFreedom == Double.POSITIVE_INFINITY ? Normal.density(t) : density(t, degreesOfFreedom, height(degreesOfFreedom));
    }

    /**
     * Probability of a value at or below {@code t}.
     *
     * @param t any number, infinities allowed
     * @param degreesOfFreedom above 0, infinity allowed
     * @throws IllegalArgumentException if an argument is out of range or NaN
     */
    public static double cdf(double t, double degreesOfFreedom) {
        return survival(-t, degreesOfFreedom);
    }

    /**
     * Probability of a value above {@code t}.
     *
     * @param t any number, infinities allowed
     * @param degreesOfFreedom above 0, infinity allowed
     * @throws IllegalArgumentException if an argument is out of range or NaN
     */
    public static double survival(double t, double degreesOfFreedom) {
        Argument.number("t", t);
        Argument.degreesOfFreedom(degreesOfFreedom);
        if (degreesOfFreedom == Double.POSITIVE_INFINITY) {
            return Normal.survival(t);
        }
        double tail = tail(Math.abs(t), degreesOfFreedom, height(degreesOfFreedom));
        return t < 0 ? 1 - tail : tail;
    }

    /**
     * Two-sided p value: probability of a value at least as far from 0 as {@code t}.
     *
     * @param t any number, infinities allowed
     * @param degreesOfFreedom above 0, infinity allowed
     * @throws IllegalArgumentException if an argument is out of range or NaN
     */
    public static double twoSidedP(double t, double degreesOfFreedom) {
        return 2 * survival(Math.abs(t), degreesOfFreedom);
    }

    /**
     * The point with probability {@code p} below it; infinite at 0 and 1.
     *
     * @param p probability in [0, 1]
     * @param degreesOfFreedom above 0, infinity allowed
     * @throws IllegalArgumentException if an argument is out of range or NaN
     */
    public static double quantile(double p, double degreesOfFreedom) {
        return -upperPoint(p, degreesOfFreedom);
    }

    /**
     * The point with probability {@code upperTail} above it: the critical value of a one-sided test at that level; infinite at 0 and 1.
     *
     * @param upperTail probability in [0, 1]
     * @param degreesOfFreedom above 0, infinity allowed
     * @throws IllegalArgumentException if an argument is out of range or NaN
     */
    public static double upperPoint(double upperTail, double degreesOfFreedom) {
        Argument.within("probability", upperTail, 0, 1);
        Argument.degreesOfFreedom(degreesOfFreedom);
        if (degreesOfFreedom == Double.POSITIVE_INFINITY) {
            return Normal.upperPoint(upperTail);
        }
        if (upperTail == 0.5) {
            return 0;
        }
        if (upperTail > 0.5) {
            return -pointOfTail(1 - upperTail, degreesOfFreedom);
        }
        return pointOfTail(upperTail, degreesOfFreedom);
    }

    /** Density at 0. */
    private static double height(double df) {
        double correction = Stirling.correction(0.5 * df + 0.5) - Stirling.correction(0.5 * df);
        double exponent = 0.5 * (df * Math.log1p(1 / df) - 1) + correction; // Gamma((df+1)/2) / Gamma(df/2) by Stirling's formula
        return Math.exp(exponent) / Math.sqrt(2 * Math.PI);
    }

    private static double density(double t, double df, double height) {
        return height * Math.exp(-0.5 * (df + 1) * logOnePlusSquare(t, df));
    }

    /** {@code log(1 + t^2 / df)}, also where the square overflows. */
    private static double logOnePlusSquare(double t, double df) {
        double size = Math.abs(t);
        return size > 1e100 ? 2 * Math.log(size) - Math.log(df) : Math.log1p(size * size / df);
    }

    /** Upper tail at {@code t >= 0}. */
    private static double tail(double t, double df, double height) {
        if (t == Double.POSITIVE_INFINITY) {
            return 0;
        }
        if (t > 1e100) {
            return t / df * density(t, df, height); // the power law has long set in
        }
        double square = t * t;
        double x = square / (df + square);
        double y = df / (df + square);
        double factor = 0.5 * t * density(t, df, height);
        if (square < 1) { // the mean of the beta distribution lies at t = 1
            return 0.5 - factor * IncompleteBeta.fraction(0.5, 0.5 * df, x, y);
        }
        return factor * IncompleteBeta.fraction(0.5 * df, 0.5, y, x);
    }

    private static double pointOfTail(double p, double df) {
        if (p == 0) {
            return Double.POSITIVE_INFINITY;
        }
        double height = height(df);
        double t = start(p, df, height);
        for (int round = 0; round < 60; round++) {
            double tail = tail(t, df, height);
            double density = density(t, df, height);
            double step;
            if (p > 0.25) {
                double wanted = (tail - p) / density;
                step = wanted / (1 - 0.5 * wanted * (df + 1) * t / (df + t * t)); // Halley
            } else { // the logarithm of the tail is concave in log t: Newton's steps cannot run away
                double logRatio = Math.log(tail / p);
                double slope = t * density / tail;
                step = t * Math.expm1(logRatio / slope);
                if (Math.abs(logRatio) < 0.1) {
                    double wanted = (tail - p) / density;
                    step = wanted / (1 - 0.5 * wanted * (df + 1) * t / (df + t * t));
                }
            }
            t += step;
            if (Math.abs(step) <= 1e-6 * t) { // of third order: the next step would be below 1e-16
                return t;
            }
        }
        throw new IllegalStateException("no point of Student's t found for tail " + p + " and " + df + " degrees of freedom");
    }

    /** A first guess: Cornish-Fisher around the normal point, or the power law of the far tail. */
    private static double start(double p, double df, double height) {
        double z = Normal.upperPoint(p);
        double square = z * z;
        if (df > 2 && square < 2 * df) {
            double first = (square + 1) / 4;
            double second = ((5 * square + 16) * square + 3) / 96;
            double third = (((3 * square + 19) * square + 17) * square - 15) / 384;
            double fourth = ((((79 * square + 776) * square + 1482) * square - 1920) * square - 945) / 92160;
            return z * (1 + (first + (second + (third + fourth / df) / df) / df) / df);
        }
        double body = (0.5 - p) / height;
        double power = Math.sqrt(df) * Math.exp(Math.log(height / Math.sqrt(df) / p) / df);
        return Math.max(body, Math.min(power, 1e150));
    }
}
