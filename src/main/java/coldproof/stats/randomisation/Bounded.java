package coldproof.stats.randomisation;

import java.util.random.RandomGenerator;

/** Whole numbers below a bound, all equally likely without remainder. */
final class Bounded {
    private Bounded() {}

    /**
     * Draws from [0, bound) by the high half of a 128-bit product; the few products that would favour some numbers are drawn again.
     *
     * @see "D. Lemire, ACM Transactions on Modeling and Computer Simulation 29 (2019) art. 3"
     */
    static long draw(RandomGenerator random, long bound) {
        long bits = random.nextLong();
        long low = bits * bound;
        if (Long.compareUnsigned(low, bound) < 0) {
            long reject = Long.remainderUnsigned(-bound, bound);
            while (Long.compareUnsigned(low, reject) < 0) {
                bits = random.nextLong();
                low = bits * bound;
            }
        }
        return Math.multiplyHigh(bits, bound) + (bits >> 63 & bound); // unsigned high half
    }
}
