package coldproof.stats.randomisation;

/** Numbers of ways to choose. */
final class Combinations {
    private Combinations() {}

    /** C(n, k), exact while it fits into 53 bits and correctly rounded to about 1e-14 beyond. */
    static double count(int n, int k) {
        double product = 1;
        int smaller = Math.min(k, n - k);
        for (int i = 1; i <= smaller; i++) {
            product = product * (n - smaller + i) / i; // every prefix is itself a binomial coefficient, hence whole
        }
        return smaller < 0 ? 0 : product;
    }
}
