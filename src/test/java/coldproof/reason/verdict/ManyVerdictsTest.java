package coldproof.reason.verdict;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.plan.Better;
import coldproof.plan.Change;
import coldproof.plan.Claim;
import coldproof.plan.NoiseAssumption;
import coldproof.reason.rehearse.bench.NormalDraws;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** The quick decision against the full one, study by study: there is no other source for "the same". */
class ManyVerdictsTest {
    private static final int STUDIES = 60;

    private enum Shape {
        SINGLE_TRIALS, PAIRS, SESSIONS, SESSIONS_WITH_FAN, UNEQUAL_SESSIONS, WITHIN, WITHIN_UNDER_AMBIENT, CARRIED_IN
    }

    private static Observation trial(String level, String session, int order, String pair, List<String> adjust) {
        return new Observation(level, session, order, pair, adjust, 1);
    }

    private static List<Observation> trials(Shape shape) {
        List<Observation> trials = new ArrayList<>();
        switch (shape) {
            case SINGLE_TRIALS -> {
                for (int i = 1; i <= 9; i++) {
                    trials.add(trial(i % 2 == 0 ? "b" : "a", "", i, "", List.of()));
                }
            }
            case PAIRS -> {
                for (int i = 0; i < 12; i++) {
                    trials.add(trial((i + i / 2) % 2 == 0 ? "a" : "b", "", i + 1, "p" + i / 2, List.of()));
                }
            }
            case CARRIED_IN -> sessions(trials, "aba", List.of(List.of(), List.of()));
            case SESSIONS -> sessions(trials, "abbaab", List.of(List.of(), List.of(), List.of()));
            case SESSIONS_WITH_FAN -> sessions(trials, "abbabaa", List.of(List.of("x"), List.of("y"), List.of("y"), List.of("x")));
            case UNEQUAL_SESSIONS -> {
                sessions(trials, "abbaba", List.of(List.of(), List.of(), List.of()));
                trials.remove(trials.size() - 1);
            }
            case WITHIN, WITHIN_UNDER_AMBIENT -> {
                for (int session = 1; session <= 5; session++) {
                    List<String> adjust = shape == Shape.WITHIN ? List.of() : List.of(session % 2 == 0 ? "cold" : "warm");
                    for (char level : (session % 2 == 0 ? "abba" : "baab").toCharArray()) {
                        trials.add(trial(String.valueOf(level), Integer.toString(session), trials.size() + 1, "", adjust));
                    }
                }
            }
        }
        return trials;
    }

    private static void sessions(List<Observation> trials, String levels, List<List<String>> conditions) {
        for (int session = 0; session < levels.length(); session++) {
            for (List<String> condition : conditions) {
                trials.add(trial(levels.substring(session, session + 1), Integer.toString(session + 1), trials.size() + 1, "", condition));
            }
        }
    }

    private static Question question(Shape shape, Claim claim, Better better) {
        boolean within = shape == Shape.WITHIN || shape == Shape.WITHIN_UNDER_AMBIENT;
        Optional<NoiseAssumption> carried = shape == Shape.CARRIED_IN
                ? Optional.of(new NoiseAssumption(1.2, 0.8, OptionalDouble.of(9), OptionalDouble.of(5), "pilot")) : Optional.empty();
        return new Question("f", "a", "b", better, 2, claim, 0.05, Optional.of(within ? Change.PER_TRIAL : Change.PER_SESSION), carried);
    }

    @ParameterizedTest
    @EnumSource(Shape.class)
    void theQuickDecisionIsTheFullOne(Shape shape) {
        Map<Word, Integer> met = new EnumMap<>(Word.class);
        for (Claim claim : Claim.values()) {
            for (Better better : Better.values()) {
                Question question = question(shape, claim, better);
                List<Observation> trials = trials(shape);
                ManyVerdicts many = ManyVerdicts.of(question, trials);
                assertTrue(many.obstacle().isEmpty(), () -> many.obstacle().toString());
                for (int study = 0; study < STUDIES; study++) {
                    double[] logs = logs(trials, study);
                    Verdict full = Verdicts.judge(question, scored(trials, logs, better), RunOrders.untested(), new SplittableRandom(1));
                    ManyVerdicts.Outcome quick = many.judge(logs);
                    assertEquals(full.word(), quick.word(), shape + " study " + study);
                    assertEquals(full.decision(), quick.decision(), shape + " study " + study);
                    met.merge(quick.word(), 1, Integer::sum);
                }
            }
        }
        assertTrue(met.size() >= 3, "too few words were met for the test to tell: " + met);
    }

    /** Changes from none to 5 %, noise of 0.5 to 2 %: every word comes up. */
    private static double[] logs(List<Observation> trials, int study) {
        NormalDraws draws = new NormalDraws(new SplittableRandom(study));
        double change = 0.01 * (study % 11 - 5);
        double sd = 0.003 * (1 + study % 4);
        double[] session = new double[20];
        for (int i = 0; i < session.length; i++) {
            session[i] = 0.5 * sd * draws.next();
        }
        double[] logs = new double[trials.size()];
        for (int i = 0; i < logs.length; i++) {
            Observation trial = trials.get(i);
            double of = trial.session().isEmpty() ? 0 : session[Integer.parseInt(trial.session())];
            logs[i] = 4 + (trial.level().equals("b") ? change : 0) + of + sd * draws.next();
        }
        return logs;
    }

    private static List<Observation> scored(List<Observation> trials, double[] logs, Better better) {
        List<Observation> scored = new ArrayList<>();
        for (int i = 0; i < logs.length; i++) {
            Observation trial = trials.get(i);
            scored.add(new Observation(trial.level(), trial.session(), trial.order(), trial.pair(), trial.adjust(), Math.exp(better.sign() * logs[i])));
        }
        return scored;
    }

    @ParameterizedTest
    @CsvSource({"aba, only one session", "aabb, came before"})
    void whatCannotDecideSaysSo(String levels, String why) {
        List<Observation> trials = new ArrayList<>();
        sessions(trials, levels, List.of(List.of(), List.of()));
        Question question = question(Shape.SESSIONS, Claim.GAIN, Better.HIGHER);
        ManyVerdicts many = ManyVerdicts.of(question, trials);
        assertTrue(many.obstacle().orElseThrow().contains(why));
    }
}
