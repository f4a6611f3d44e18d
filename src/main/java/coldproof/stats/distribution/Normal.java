package coldproof.stats.distribution;

import coldproof.stats.Argument;

/**
 * The standard normal distribution.
 *
 * <p>Tails by W. J. Cody, "Rational Chebyshev approximation for the error function", Mathematics of Computation 23 (1969) 631-637;
 * points by M. J. Wichura, algorithm AS 241, Applied Statistics 37 (1988) 477-484 (both from memory, checked against other programs).
 */
public final class Normal {
    private static final double ONE_OVER_ROOT_TWO_PI = 0.3989422804014326779399461;
    private static final double ROOT_32 = 5.656854249492380195206755;
    private static final double BODY = 0.67448975; // upper quartile: inside it Cody's first rational function is used
    private static final double VANISHES = 38.5; // beyond it a tail is below the smallest double

    private Normal() {}

    /** Density {@code exp(-x^2 / 2) / sqrt(2 pi)}; {@code x} any number but NaN. */
    public static double density(double x) {
        return ONE_OVER_ROOT_TWO_PI * Math.exp(-0.5 * x * x);
    }

    /**
     * Probability of a value at or below {@code x}; relative error about 1e-15, in the far tail too.
     *
     * @throws IllegalArgumentException if {@code x} is NaN
     */
    public static double cdf(double x) {
        return lower(Argument.number("x", x));
    }

    /**
     * Probability of a value above {@code x}; relative error about 1e-15, in the far tail too.
     *
     * @throws IllegalArgumentException if {@code x} is NaN
     */
    public static double survival(double x) {
        return lower(-Argument.number("x", x));
    }

    /** {@link #cdf} without the check, for inner loops. */
    static double lower(double x) {
        double y = Math.abs(x);
        if (y <= BODY) {
            return 0.5 + x * oddPart(y * y);
        }
        double tail = y < VANISHES ? tail(y) : 0;
        return x < 0 ? tail : 1 - tail;
    }

    /** Density at {@code x} divided by the probability at or below {@code x}: the slope of the logarithm of that. Never NaN or 0 by underflow. */
    static double inverseMills(double x) {
        if (x > -30) {
            return density(x) / lower(x);
        }
        double r = 1 / (x * x); // asymptotic series of Mills' ratio; the first term left out is below 1e-12 here
        return -x / (1 - r * (1 - 3 * r * (1 - 5 * r * (1 - 7 * r))));
    }

    /**
     * The point with probability {@code p} below it; -infinity at 0 and infinity at 1.
     *
     * @throws IllegalArgumentException if {@code p} is outside [0, 1] or NaN
     */
    public static double quantile(double p) {
        Argument.within("probability", p, 0, 1);
        return p <= 0.5 ? lowerPoint(p) : -lowerPoint(1 - p);
    }

    /**
     * The point with probability {@code p} above it; exact for tiny tails, where {@code quantile(1 - p)} is not.
     *
     * @throws IllegalArgumentException if {@code p} is outside [0, 1] or NaN
     */
    public static double upperPoint(double p) {
        Argument.within("probability", p, 0, 1);
        return p <= 0.5 ? -lowerPoint(p) : lowerPoint(1 - p);
    }

    private static double oddPart(double square) {
        double top = 0.065682337918207449113;
        double bottom = 1;
        top = top * square + 2.2352520354606839287;
        bottom = bottom * square + 47.20258190468824187;
        top = top * square + 161.02823106855587881;
        bottom = bottom * square + 976.09855173777669322;
        top = top * square + 1067.6894854603709582;
        bottom = bottom * square + 10260.932208618978205;
        top = top * square + 18154.981253343561249;
        bottom = bottom * square + 45507.789335026729956;
        return top / bottom;
    }

    private static double tail(double y) {
        double factor;
        if (y <= ROOT_32) {
            double top = 1.0765576773720192317e-8;
            double bottom = 1;
            top = top * y + .39894151208813466764;
            bottom = bottom * y + 22.266688044328115691;
            top = top * y + 8.8831497943883759412;
            bottom = bottom * y + 235.38790178262499861;
            top = top * y + 93.506656132177855979;
            bottom = bottom * y + 1519.377599407554805;
            top = top * y + 597.27027639480026226;
            bottom = bottom * y + 6485.558298266760755;
            top = top * y + 2494.5375852903726711;
            bottom = bottom * y + 18615.571640885098091;
            top = top * y + 6848.1904505362823326;
            bottom = bottom * y + 34900.952721145977266;
            top = top * y + 11602.651437647350124;
            bottom = bottom * y + 38912.003286093271411;
            top = top * y + 9842.7148383839780218;
            bottom = bottom * y + 19685.429676859990727;
            factor = top / bottom;
        } else {
            double r = 1 / (y * y);
            double top = .02307344176494017303;
            double bottom = 1;
            top = top * r + .21589853405795699;
            bottom = bottom * r + 1.28426009614491121;
            top = top * r + .1274011611602473639;
            bottom = bottom * r + .468238212480865118;
            top = top * r + .022235277870649807;
            bottom = bottom * r + .0659881378689285515;
            top = top * r + .001421619193227893466;
            bottom = bottom * r + .00378239633202758244;
            top = top * r + 2.9112874951168792e-5;
            bottom = bottom * r + 7.29751555083966205e-5;
            factor = (ONE_OVER_ROOT_TWO_PI - r * top / bottom) / y;
        }
        return factor * gauss(y);
    }

    /** {@code exp(-y^2 / 2)}; for large arguments the square is split so that its rounding does not reach the exponential. */
    private static double gauss(double y) {
        if (y < 3) {
            return Math.exp(-0.5 * y * y);
        }
        double coarse = Math.rint(y * 16) / 16;
        return Math.exp(-0.5 * coarse * coarse) * Math.exp(-0.5 * (y - coarse) * (y + coarse));
    }

    private static double lowerPoint(double p) {
        double q = p - 0.5;
        if (q >= -0.425) {
            return q * centralRatio(0.180625 - q * q);
        }
        if (p == 0) {
            return Double.NEGATIVE_INFINITY;
        }
        double r = Math.sqrt(-Math.log(p));
        return -(r <= 5 ? middleRatio(r - 1.6) : farRatio(r - 5));
    }

    private static double centralRatio(double r) {
        double top = (((((((2509.0809287301226727 * r + 33430.575583588128105) * r + 67265.770927008700853) * r + 45921.953931549871457) * r
                + 13731.693765509461125) * r + 1971.5909503065514427) * r + 133.14166789178437745) * r + 3.387132872796366608);
        double bottom = (((((((5226.495278852854561 * r + 28729.085735721942674) * r + 39307.89580009271061) * r + 21213.794301586595867) * r
                + 5394.1960214247511077) * r + 687.1870074920579083) * r + 42.313330701600911252) * r + 1.0);
        return top / bottom;
    }

    private static double middleRatio(double r) {
        double top = (((((((7.7454501427834140764e-4 * r + .0227238449892691845833) * r + .24178072517745061177) * r
                + 1.27045825245236838258) * r + 3.64784832476320460504) * r + 5.7694972214606914055) * r + 4.6303378461565452959) * r
                + 1.42343711074968357734);
        double bottom = (((((((1.05075007164441684324e-9 * r + 5.475938084995344946e-4) * r + .0151986665636164571966) * r
                + .14810397642748007459) * r + .68976733498510000455) * r + 1.6763848301838038494) * r + 2.05319162663775882187) * r + 1.0);
        return top / bottom;
    }

    private static double farRatio(double r) {
        double top = (((((((2.01033439929228813265e-7 * r + 2.71155556874348757815e-5) * r + .0012426609473880784386) * r
                + .026532189526576123093) * r + .29656057182850489123) * r + 1.7848265399172913358) * r + 5.4637849111641143699) * r
                + 6.6579046435011037772);
        double bottom = (((((((2.04426310338993978564e-15 * r + 1.4215117583164458887e-7) * r + 1.8463183175100546818e-5) * r
                + 7.868691311456132591e-4) * r + .0148753612908506148525) * r + .13692988092273580531) * r + .59983220655588793769) * r + 1.0);
        return top / bottom;
    }
}
