package coldproof.stats.model;

import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.apache.commons.math3.distribution.FDistribution;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.special.Beta;

/** The central distributions this package needs, each behind one call. */
final class Central {
    private static final double QUANTILE_ACCURACY = 1e-14; // absolute; the library's own default is 1e-9

    private Central() {}

    /** P(|T| >= |t|) for Student's t. */
    static double twoSidedP(double t, double df) {
        if (Double.isInfinite(t)) {
            return 0;
        }
        return Beta.regularizedBeta(df / (df + t * t), df / 2, 0.5);
    }

    /** The t that is exceeded in absolute value with probability {@code alpha}. */
    static double twoSidedPoint(double alpha, double df) {
        return new TDistribution(null, df, QUANTILE_ACCURACY).inverseCumulativeProbability(1 - alpha / 2);
    }

    /** P(F > f). */
    static double fUpperTail(double f, double df1, double df2) {
        return Beta.regularizedBeta(df2 / (df2 + df1 * f), df2 / 2, df1 / 2);
    }

    /** The f that is exceeded with probability {@code upper}. */
    static double fUpperPoint(double upper, double df1, double df2) {
        return new FDistribution(null, df1, df2, QUANTILE_ACCURACY).inverseCumulativeProbability(1 - upper);
    }

    /** The chi-square value below which a share {@code lower} lies. */
    static double chiSquarePoint(double lower, double df) {
        return new ChiSquaredDistribution(null, df, QUANTILE_ACCURACY).inverseCumulativeProbability(lower);
    }
}
