package coldproof.stats;

/** The sum of the products of two vectors, entry by entry. */
public final class DotProduct {
    private DotProduct() {}

    /** {@code sum a_i b_i} over the entries of the first; the second has as many or more. */
    public static double of(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }
}
