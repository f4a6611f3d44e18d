package coldproof.stats.model;

/**
 * An F test.
 *
 * @param f the statistic, 0 or more
 * @param numerator degrees of freedom of the numerator
 * @param denominator degrees of freedom of the denominator; need not be whole
 * @param p probability of a statistic at least as large if the hypothesis holds
 */
public record FTest(double f, int numerator, double denominator, double p) {
    /** Refuses what is no test result. */
    public FTest {
        if (!(f >= 0) || numerator < 1 || !(denominator > 0) || !(p >= 0 && p <= 1)) {
            throw new IllegalArgumentException("F " + f + " on " + numerator + " and " + denominator + " df with p " + p + " is no test result");
        }
    }

    static FTest of(double f, int numerator, double denominator) {
        return new FTest(f, numerator, denominator, Central.fUpperTail(f, numerator, denominator));
    }
}
