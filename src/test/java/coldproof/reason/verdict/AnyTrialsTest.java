package coldproof.reason.verdict;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.plan.Better;
import coldproof.plan.Change;
import coldproof.plan.Claim;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Whatever trials somebody has, there is an answer, and it does not hang on names, units or the order of rows. */
class AnyTrialsTest {
    private static Question question(String baseline, String against, Optional<Change> change) {
        return new Question("fan", baseline, against, Better.HIGHER, 2, Claim.GAIN, 0.05, change, Optional.empty());
    }

    private static Verdict judge(Question question, List<Observation> trials) {
        return Verdicts.judge(question, trials, RunOrders.unknown(), new SplittableRandom(1));
    }

    /** Up to 24 trials with sessions, pairs, orders, factors and covariates as they come, some scores all alike. */
    private static List<Observation> any(SplittableRandom chance) {
        int count = chance.nextInt(1, 24);
        boolean sessions = chance.nextInt(4) > 0;
        boolean pairs = chance.nextInt(5) == 0;
        boolean ordered = chance.nextBoolean();
        boolean perSession = chance.nextBoolean();
        int factors = chance.nextInt(3);
        int covariates = chance.nextInt(2);
        double sd = chance.nextInt(6) == 0 ? 0 : 0.01;
        List<Observation> trials = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            int session = chance.nextInt(5);
            boolean maximum = perSession && sessions ? session % 2 == 0 : chance.nextBoolean();
            List<String> adjust = new ArrayList<>();
            for (int f = 0; f < factors; f++) {
                adjust.add(chance.nextInt(3) == 0 ? "s" + session % 3 : "x" + chance.nextInt(2 + f));
            }
            List<Double> covariate = covariates == 0 ? List.of() : List.of(chance.nextInt(4) == 0 ? (double) session : chance.nextDouble());
            trials.add(new Observation(maximum ? "maximum" : "auto", sessions ? "s" + session : "", ordered ? i : Double.NaN, pairs ? "p" + i / 2 : "", adjust,
                    covariate, 100 * Math.exp((maximum ? 0.01 : 0) + sd * Simulated.normal(chance))));
        }
        return trials;
    }

    @Test
    void everyTableGetsAnAnswerThatTurnsRoundWithItsLevels() {
        int decided = 0;
        for (int seed = 0; seed < 500; seed++) {
            List<Observation> trials = any(new SplittableRandom(seed));
            Optional<Change> change = seed % 3 == 0 ? Optional.empty() : Optional.of(seed % 3 == 1 ? Change.PER_SESSION : Change.PER_TRIAL);
            Verdict forth = judge(question("auto", "maximum", change), trials);
            Verdict back = judge(question("maximum", "auto", change), trials);
            String where = "seed " + seed + ": " + trials;
            assertEquals(forth.estimate().isPresent(), back.estimate().isPresent(), where);
            assertEquals(forth.decision() == Decision.UNDECIDED, back.decision() == Decision.UNDECIDED, where);
            if (forth.estimate().isPresent()) {
                assertEquals(forth.estimate().get().log(), -back.estimate().get().log(), 1e-9, where);
                assertEquals(forth.estimate().get().p(), back.estimate().get().p(), 1e-7, where);
                decided += forth.decision() == Decision.UNDECIDED ? 0 : 1;
            }
        }
        assertTrue(decided > 30, "only " + decided + " tables decided anything");
    }

    @Test
    void otherUnitsChangeNothingButTheScores() {
        for (int seed = 0; seed < 80; seed++) {
            List<Observation> trials = any(new SplittableRandom(seed));
            Verdict one = judge(question("auto", "maximum", Optional.empty()), trials);
            Verdict thousand = judge(question("auto", "maximum", Optional.empty()), trials.stream().map(trial -> trial.withScore(1000 * trial.score())).toList());
            assertEquals(one.word(), thousand.word());
            one.estimate().ifPresent(change -> assertEquals(change.p(), thousand.estimate().orElseThrow().p(), 1e-7));
            assertEquals(one.checks().stream().map(Check::warns).toList(), thousand.checks().stream().map(Check::warns).toList(), "seed " + seed);
        }
    }
}
