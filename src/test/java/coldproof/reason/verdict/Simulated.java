package coldproof.reason.verdict;

import coldproof.plan.Better;
import coldproof.plan.Change;
import coldproof.plan.Claim;
import coldproof.stats.distribution.Normal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.IntToDoubleFunction;

/** Trials of an invented bench, made from a seed. */
final class Simulated {
    private Simulated() {}

    static Question question(Change change) {
        return new Question("fan", "auto", "maximum", Better.HIGHER, 3, Claim.GAIN, 0.05, Optional.of(change), Optional.empty());
    }

    static double normal(SplittableRandom chance) {
        return Normal.quantile(0.5 * Math.ulp(1.0) + chance.nextDouble() * (1 - Math.ulp(1.0)));
    }

    /** Counterbalanced trials in one run: auto, maximum, maximum, auto, ... with the log noise of each place. */
    static List<Observation> alternating(int count, double logEffect, IntToDoubleFunction noise) {
        List<Observation> trials = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            boolean maximum = i % 4 == 1 || i % 4 == 2;
            double log = Math.log(100) + (maximum ? logEffect : 0) + noise.applyAsDouble(i);
            trials.add(new Observation(maximum ? "maximum" : "auto", "", i + 1, "", List.of(), Math.exp(log)));
        }
        return trials;
    }
}
