package coldproof.stats.distribution;

import coldproof.stats.Argument;
import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;

/**
 * Averages a log-concave function over the distribution of {@code s = sqrt(chi-square / df)}, the ratio of an estimated to the true
 * standard deviation.
 *
 * <p>The density of {@code s} is {@code 2 sqrt(df / (4 pi)) exp(-c) exp(-df ((s^2 - 1) / 2 - log s)) / s} with Stirling's correction
 * {@code c} of {@code df / 2}; written so, many degrees of freedom lose no digits. From one degree of freedom on it is log-concave, and
 * so is its product with a log-concave function: one peak, found first, so that far tails keep their relative accuracy.
 */
public final class ChiMixture {
    /** Where the integrand has fallen by this in logarithm from its peak, the rest is below the rounding of a double. */
    private static final double DROP = 38;
    /** Half width of a step of the normal distribution function, in standard deviations: beyond it, it is 0 or 1 to rounding. */
    private static final double STEP_REACH = 8.5;
    /** A stretch longer than this many standard deviations of the step is cut at the step. */
    private static final double LONG_STRETCH = 22;

    /** A function above this at 1 needs no search for the peak. */
    private static final double PLAIN = 0.02;
    /** As {@link #DROP}, for the body: the density may fall less because the function does not outweigh it. */
    private static final double BODY_DROP = 37;
    /** From so many degrees of freedom on the density vanishes smoothly at both ends and the trapezoidal rule is best. */
    private static final double MANY = 24;
    /** Step of the trapezoidal rule in standard deviations of the sharpest peak: {@code exp(-(2 pi / step)^2 / 2)} is 1e-14. */
    private static final double TRAPEZOID_STEP = 0.78;

    /** A positive, log-concave function of {@code s}. */
    interface Kernel {
        double at(double s);

        /** Derivative of the logarithm. */
        double logSlope(double s);
    }

    private final double df;
    private final double height;

    /**
     * The distribution of {@code s} with these degrees of freedom.
     *
     * @param degreesOfFreedom 1 or more, finite
     * @throws IllegalArgumentException if they are out of range or NaN
     */
    public ChiMixture(double degreesOfFreedom) {
        df = Argument.within("degrees of freedom", degreesOfFreedom, 1, Double.MAX_VALUE);
        height = Math.sqrt(df / Math.PI) * Math.exp(-Stirling.correction(0.5 * df));
    }

    /**
     * Average of a smooth, bounded function of {@code s} that is not tiny near 1.
     *
     * @param steepness inverse of the width in {@code s} over which the function changes most, 0 or more; decides the number of nodes
     */
    public double average(DoubleUnaryOperator function, double steepness) {
        return averageOverBody(function, steepness);
    }

    /** Density of {@code s}, {@code s} above 0. */
    double density(double s) {
        return height * Math.exp(-df * fall(s)) / s;
    }

    /** {@code (s^2 - 1) / 2 - log s}. */
    private static double fall(double s) {
        double e = s - 1;
        return e > -0.25 && e < 0.35 ? 0.5 * e * e - Stirling.logOnePlusMinus(e) : 0.5 * (s * s - 1) - Math.log(s);
    }

    /**
     * Integral of {@code kernel(s) density(s)} from 0 to {@code end}.
     *
     * @param end above 0, infinity allowed
     * @param steepness of the kernel's steps: the inverse of their standard deviation in {@code s}
     * @param middles where in {@code s} the kernel's steps have their middle, ascending
     */
    double average(Kernel kernel, double end, double steepness, double... middles) {
        return average(kernel::at, kernel, end, steepness, middles);
    }

    /**
     * Integral of {@code function(s) density(s)} from 0 to {@code end} for a function that is dear to compute.
     *
     * @param shape a cheap function within a constant factor of the other, from which the range is found
     */
    double average(DoubleUnaryOperator function, Kernel shape, double end, double steepness, double... middles) {
        if (end == Double.POSITIVE_INFINITY && shape.at(1) > PLAIN) {
            return averageOverBody(function, steepness, middles);
        }
        double peak = peak(shape, end);
        double top = logIntegrand(shape, peak);
        double low = fallsOff(shape, peak, top, 0);
        double high = fallsOff(shape, peak, top, end);
        double curvature = (df > 1 ? (df - 1) / (peak * peak) : 0) + df + steepness * steepness; // the sharpest the peak can be
        return overStretches(function, Math.sqrt(curvature), cuts(low, high, steepness, middles));
    }

    /** Where the function is of moderate size at 1, the range is that of the density. */
    private double averageOverBody(DoubleUnaryOperator function, double steepness, double... middles) {
        double low = bodyEnd(-1);
        double high = bodyEnd(1);
        double scale = Math.sqrt(2 * df + steepness * steepness);
        if (df < MANY || (high - low) * steepness > LONG_STRETCH) {
            return overStretches(function, scale, cuts(low, high, steepness, middles));
        }
        int steps = (int) Math.ceil((high - low) * scale / TRAPEZOID_STEP);
        double step = (high - low) / steps;
        double sum = 0; // smooth and vanishing at both ends: the trapezoidal rule converges faster than any power of its step
        for (int i = 1; i < steps; i++) {
            double s = low + i * step;
            sum += function.applyAsDouble(s) * density(s);
        }
        return step * sum;
    }

    /** Where, below (-1) or above (1) the mode, the density has fallen by {@link #BODY_DROP}; errs outwards. */
    private double bodyEnd(int side) {
        double drop = BODY_DROP / df;
        double s = side > 0 ? 1 + Math.sqrt(drop) : drop < 1 ? 1 - Math.sqrt(drop) : Math.exp(-drop - 0.5);
        for (int round = 0; round < 2; round++) { // Newton on a convex function, from inside: steps overshoot outwards
            s -= (fall(s) - drop) / (s - 1 / s);
            if (s < 1e-4) {
                return 0;
            }
        }
        return s;
    }

    private double overStretches(DoubleUnaryOperator function, double scale, double[] cuts) {
        double sum = 0;
        for (int i = 1; i < cuts.length; i++) {
            double length = (cuts[i] - cuts[i - 1]) * scale; // in standard deviations of the sharpest peak
            int least = brokenPower(cuts[i - 1], cuts[i]) ? 48 : 8;
            GaussLegendre rule = GaussLegendre.atLeast((int) Math.min(64, Math.max(least, 18 + 1.15 * length)));
            sum += stretch(function, cuts[i - 1], cuts[i], rule);
        }
        return sum;
    }

    /** Ends of the stretches on which the integrand is smooth, ascending. */
    private double[] cuts(double low, double high, double steepness, double... middles) {
        double[] cuts = new double[3 + 2 * middles.length];
        int count = 0;
        cuts[count++] = low;
        cuts[count++] = high;
        if (brokenPower(low, high)) {
            cuts[count++] = low + 0.2 * (high - low); // the power of s at 0 gets a stretch of its own
        }
        if ((high - low) * steepness > LONG_STRETCH) {
            for (double middle : middles) {
                count = addIfInside(cuts, count, middle - STEP_REACH / steepness);
                count = addIfInside(cuts, count, middle + STEP_REACH / steepness);
            }
        }
        double[] sorted = Arrays.copyOf(cuts, count);
        Arrays.sort(sorted);
        return sorted;
    }

    private static int addIfInside(double[] cuts, int count, double cut) {
        if (cut > cuts[0] && cut < cuts[1]) {
            cuts[count] = cut;
            return count + 1;
        }
        return count;
    }

    /** Whether the density has a power of {@code s} near 0 that no polynomial follows. */
    private boolean brokenPower(double low, double high) {
        return df < 6 && df != Math.rint(df) && low < 0.1 * high;
    }

    private double stretch(DoubleUnaryOperator function, double from, double to, GaussLegendre rule) {
        double sum = 0;
        if (brokenPower(from, to)) {
            for (int i = 0; i < rule.order(); i++) { // a cubic change of variable makes a broken power of s smooth enough
                double w = 0.5 * (1 + rule.node(i));
                double s = from + (to - from) * w * w * w;
                sum += rule.weight(i) * 1.5 * w * w * function.applyAsDouble(s) * density(s);
            }
            return (to - from) * sum;
        }
        double half = 0.5 * (to - from);
        double middle = 0.5 * (to + from);
        for (int i = 0; i < rule.order(); i++) {
            double s = middle + half * rule.node(i);
            sum += rule.weight(i) * function.applyAsDouble(s) * density(s);
        }
        return half * sum;
    }

    private double logIntegrand(Kernel kernel, double s) {
        return Math.log(kernel.at(s)) - df * fall(s) - Math.log(s);
    }

    private double slope(Kernel kernel, double s) {
        return (df - 1) / s - df * s + kernel.logSlope(s);
    }

    /** The maximum of the integrand on (0, end), to a few percent of its width. */
    private double peak(Kernel kernel, double end) {
        double s = Math.min(Math.sqrt((df - 1) / df), end);
        if (s < 1e-6) {
            s = Math.min(0.1, end);
        }
        double slope = slope(kernel, s);
        double low = 0;
        double high = end;
        double slopeLow = Double.POSITIVE_INFINITY;
        double slopeHigh = Double.NEGATIVE_INFINITY;
        for (int round = 0; round < 60; round++) {
            if (slope > 0) {
                low = s;
                slopeLow = slope;
            } else {
                high = s;
                slopeHigh = slope;
            }
            if (high - low < 0.02 * high * Math.min(1, 3 / Math.sqrt(df)) || slope == 0) {
                break;
            }
            double next;
            if (slopeLow == Double.POSITIVE_INFINITY) {
                next = 0.3 * s;
            } else if (slopeHigh == Double.NEGATIVE_INFINITY) {
                next = Math.min(s * 1.5, end);
                if (next == s) {
                    return end;
                }
            } else {
                double share = slopeLow / (slopeLow - slopeHigh);
                next = low + (high - low) * Math.max(0.1, Math.min(0.9, share));
            }
            s = next;
            if (s < 1e-12) {
                return s;
            }
            slope = slope(kernel, s);
        }
        return 0.5 * (low + high);
    }

    /** The point between the peak and a bound at which the integrand has fallen by {@link #DROP}, or the bound; errs outwards. */
    private double fallsOff(Kernel kernel, double peak, double top, double bound) {
        double inside = peak;
        double outside;
        if (bound < peak) {
            outside = 0;
        } else {
            double reach = 4 / Math.sqrt(df);
            outside = peak + reach;
            while (outside < bound && logIntegrand(kernel, outside) > top - DROP) {
                inside = outside;
                reach *= 2;
                outside = peak + reach;
            }
            if (outside >= bound) {
                if (logIntegrand(kernel, bound) > top - DROP) {
                    return bound;
                }
                outside = bound;
            }
        }
        for (int round = 0; round < 40 && Math.abs(outside - inside) > 0.1 * Math.abs(outside - peak); round++) {
            double middle = 0.5 * (inside + outside);
            if (logIntegrand(kernel, middle) > top - DROP) {
                inside = middle;
            } else {
                outside = middle;
            }
        }
        return outside;
    }
}
