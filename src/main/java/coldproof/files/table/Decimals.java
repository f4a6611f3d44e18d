package coldproof.files.table;

/** Exact powers of ten for reading decimals. */
final class Decimals {
    /** Digits a mantissa may have so that it is exact as a double and the quotient by an exact power of ten is correctly rounded. */
    static final int EXACT_DIGITS = 15;
    private static final double[] POWERS = {1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15};

    private Decimals() {}

    /** Ten to the power given, which is 0 to {@value #EXACT_DIGITS}. */
    static double powerOfTen(int power) {
        return POWERS[power];
    }
}
