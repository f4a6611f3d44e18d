package coldproof.reason.rehearse.bench;

import java.util.random.RandomGenerator;

/**
 * Standard normal draws by the polar rule. Own code because {@link RandomGenerator#nextGaussian()} may change between Java versions, and a
 * seed must give the same study for ever.
 *
 * @see "G. Marsaglia, T. A. Bray, A convenient method for generating normal variables, SIAM Review 6 (1964) 260-264 (from memory)"
 */
public final class NormalDraws {
    private final RandomGenerator random;
    private double spare;
    private boolean hasSpare;

    /** Draws that come from this generator. */
    public NormalDraws(RandomGenerator random) {
        this.random = random;
    }

    /** The next draw, mean 0, standard deviation 1. */
    public double next() {
        if (hasSpare) {
            hasSpare = false;
            return spare;
        }
        double x;
        double y;
        double square;
        do {
            x = 2 * uniform() - 1;
            y = 2 * uniform() - 1;
            square = x * x + y * y;
        } while (square >= 1 || square == 0);
        double scale = Math.sqrt(-2 * StrictMath.log(square) / square);
        spare = y * scale;
        hasSpare = true;
        return x * scale;
    }

    /** The next uniform draw, in [0, 1), from the upper 53 bits of a long. */
    public double uniform() {
        return (random.nextLong() >>> 11) * 0x1.0p-53;
    }
}
