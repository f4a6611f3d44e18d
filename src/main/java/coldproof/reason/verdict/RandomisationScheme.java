package coldproof.reason.verdict;

import java.util.Optional;
import java.util.random.RandomGenerator;

/** The orders that could have been drawn instead of the one that was. */
public final class RandomisationScheme {
    private RandomisationScheme() {}

    /** Nothing more is known than that levels were put to sessions, pairs or trials by lot. */
    public static RandomisationScheme free() {
        return new RandomisationScheme();
    }

    Optional<Randomisation> test(Question question, Stratum stratum, Arrangement arrangement, RandomGenerator chance) {
        return Optional.empty();
    }
}
