package coldproof.reason.verdict;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.plan.Change;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** Each check warns of what it is for, is quiet where there is nothing, and drops nothing. */
class ChecksTest {
    private final SplittableRandom chance = new SplittableRandom(5);

    private static Verdict judge(List<Observation> trials) {
        return Verdicts.judge(Simulated.question(Change.PER_TRIAL), trials, RunOrders.unknown(), new SplittableRandom(1));
    }

    private static Check check(Verdict verdict, String name) {
        return verdict.checks().stream().filter(check -> check.name().equals(name)).findFirst().orElseThrow(() -> new AssertionError("no check " + name));
    }

    private double noise() {
        return 0.01 * Simulated.normal(chance);
    }

    @Test
    void quietNoiseGivesNoWarning() {
        Verdict verdict = judge(Simulated.alternating(24, 0.02, i -> noise()));
        assertTrue(verdict.checks().stream().noneMatch(Check::warns), verdict.checks().toString());
        assertEquals(List.of("order", "drift", "autocorrelation", "outliers", "normality", "variance", "agreement"), verdict.checks().stream().map(Check::name).toList());
    }

    @Test
    void aDriftIsSeenWithItsSize() {
        Verdict verdict = judge(Simulated.alternating(24, 0.02, i -> noise() - 0.002 * i));
        Check drift = check(verdict, "drift");
        assertTrue(drift.warns());
        double percent = Double.parseDouble(drift.text().replaceAll("Scores drift by (\\S+) %.*", "$1"));
        assertEquals(-4.5, percent, 2); // 23 steps of -0.2 % in log, with three standard errors of 0.7 %
        assertTrue(drift.text().contains("beside a straight drift it would be +"), drift.text());
        assertFalse(check(verdict, "autocorrelation").warns(), "a straight drift taken out leaves no autocorrelation");
    }

    @Test
    void aSlowWanderingIsSeenAsAutocorrelation() {
        double[] state = {0};
        Check found = check(judge(Simulated.alternating(40, 0, i -> state[0] = 0.9 * state[0] + noise())), "autocorrelation");
        assertTrue(found.warns(), found.text());
    }

    @Test
    void aFirstTrialThatIsBetterThanTheRestIsSeenAsWarmUp() {
        Arrangement cold = arrangement(sessions(4).trials().stream().map(trial -> trial.withScore(trial.score() * (trial.order() == 0 ? 1.05 : 1))).toList());
        Check found = Checks.of(Simulated.question(Change.PER_TRIAL), Stratum.WITHIN_SESSIONS, cold).stream().filter(check -> check.name().equals("warm-up"))
                .findFirst().orElseThrow();
        assertTrue(found.warns(), found.text());
    }

    @Test
    void pairsThatWanderAreSeenInTheirTrials() {
        double[] state = {0};
        List<Observation> trials = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            state[0] = 0.9 * state[0] + noise();
            trials.add(new Observation(i % 4 == 0 || i % 4 == 3 ? "auto" : "maximum", "", i, "p" + i / 2, List.of(), 100 * Math.exp(state[0])));
        }
        assertTrue(check(judge(trials), "autocorrelation").warns());
    }

    @Test
    void oneGrossTrialIsNamedAndKept() {
        Verdict verdict = judge(Simulated.alternating(24, 0.02, i -> i == 10 ? -0.2 : noise()));
        assertTrue(check(verdict, "outliers").warns());
        assertTrue(check(verdict, "outliers").text().contains("maximum in run 11 (83."), check(verdict, "outliers").text());
        assertEquals(List.of(12, 12), verdict.trials());
    }

    @Test
    void twoOutliersDoNotHideEachOther() {
        Check found = check(judge(Simulated.alternating(24, 0, i -> i == 10 || i == 13 ? -0.2 : noise())), "outliers");
        assertTrue(found.text().startsWith("2 values stick"), found.text());
    }

    @Test
    void heavyTailsAreNotNormal() {
        Check found = check(judge(Simulated.alternating(40, 0, i -> Math.pow(Simulated.normal(chance), 5) / 1000)), "normality");
        assertTrue(found.warns(), found.text());
    }

    @Test
    void aNoisierLevelIsSeen() {
        Check found = check(judge(Simulated.alternating(24, 0, i -> (i % 4 == 1 || i % 4 == 2 ? 6 : 1) * noise())), "variance");
        assertTrue(found.warns(), found.text());
    }

    @Test
    void anUnknownOrderIsSaid() {
        List<Observation> trials = new ArrayList<>();
        Simulated.alternating(12, 0, i -> noise()).forEach(t -> trials.add(new Observation(t.level(), "", Double.NaN, "", List.of(), t.score())));
        Verdict verdict = judge(trials);
        assertTrue(check(verdict, "order").warns());
        assertTrue(verdict.checks().stream().noneMatch(check -> check.name().equals("drift")));
    }

    @Test
    void otherWaysOfTestingAreSetBesideTheFirst() {
        Check agree = check(judge(Simulated.alternating(24, 0.05, i -> noise())), "agreement");
        assertFalse(agree.warns(), agree.text());
        assertTrue(agree.text().matches("The t test sees a change, and so does the randomisation test .*, the ratio of means .* and the bootstrap .*"), agree.text());
    }

    @Test
    void waysThatDifferAreWarnedOf() {
        int warned = 0;
        for (int study = 0; study < 60; study++) {
            Check check = check(judge(Simulated.alternating(16, 0.011, i -> noise())), "agreement"); // power near one half: many lie near the border
            warned += check.warns() ? 1 : 0;
            assertEquals(check.warns(), check.text().contains("does not") || check.text().contains("do not"), check.text());
        }
        assertTrue(warned > 0 && warned < 30, warned + " of 60 warned");
    }

    @Test
    void tensOfThousandsOfTrialsAreNoTrouble() {
        List<Check> checks = Checks.of(Simulated.question(Change.PER_TRIAL), Stratum.TRIALS, arrangement(Simulated.alternating(6000, 0, i -> noise())));
        assertTrue(checks.stream().anyMatch(check -> check.name().equals("normality") && check.text().contains("more than 5000")), checks.toString());
        List<Observation> many = new ArrayList<>();
        Simulated.alternating(6000, 0, i -> noise()).forEach(trial -> many.add(new Observation(trial.level(), "s" + (int) trial.order() / 10, trial.order(), "", List.of(), trial.score())));
        assertEquals(List.of("size"), Checks.of(Simulated.question(Change.PER_TRIAL), Stratum.WITHIN_SESSIONS, arrangement(many)).stream().map(Check::name).toList());
    }

    @Test
    void pairsRunInOneOrderOnlyAreWarnedOf() {
        List<Observation> trials = new ArrayList<>();
        for (int pair = 0; pair < 8; pair++) {
            trials.add(new Observation("auto", "", 2 * pair, "p" + pair, List.of(), 100 * Math.exp(noise())));
            trials.add(new Observation("maximum", "", 2 * pair + 1, "p" + pair, List.of(), 103 * Math.exp(noise())));
        }
        assertTrue(check(judge(trials), "order").text().startsWith("In every pair auto was run first"));
    }

    /** 500 studies of quiet normal noise in each of three shapes: no check cries wolf much more often than it says. */
    @Test
    void needlessWarningsAreRare() {
        TreeMap<String, Integer> warned = new TreeMap<>();
        int studies = 500;
        for (int study = 0; study < studies; study++) {
            count(warned, "12 trials", Checks.of(Simulated.question(Change.PER_TRIAL), Stratum.TRIALS, arrangement(Simulated.alternating(12, 0, i -> noise()))));
            count(warned, "sessions of 4", Checks.of(Simulated.question(Change.PER_TRIAL), Stratum.WITHIN_SESSIONS, sessions(4)));
            count(warned, "sessions of 2", Checks.of(Simulated.question(Change.PER_TRIAL), Stratum.WITHIN_SESSIONS, sessions(2)));
        }
        warned.forEach((name, count) -> assertTrue(count < 0.055 * studies, name + " warned in " + count + " of " + studies)); // 2.5 % and four standard errors
    }

    private Arrangement sessions(int trials) {
        List<Observation> all = new ArrayList<>();
        for (int session = 0; session < 5; session++) {
            double day = noise();
            for (int i = 0; i < trials; i++) {
                boolean maximum = (i + session) % 2 == 1;
                all.add(new Observation(maximum ? "maximum" : "auto", Integer.toString(session), i, "", List.of(), 100 * Math.exp(day + noise())));
            }
        }
        return arrangement(all);
    }

    private static Arrangement arrangement(List<Observation> trials) {
        return new Arrangement(Simulated.question(Change.PER_TRIAL), trials);
    }

    private static void count(TreeMap<String, Integer> warned, String shape, List<Check> checks) {
        checks.stream().filter(Check::warns).forEach(check -> warned.merge(shape + ": " + check.name(), 1, Integer::sum));
    }

    @Test
    void aPlaceThatStandsTwiceIsWarnedOf() {
        List<Observation> trials = new ArrayList<>(Simulated.alternating(12, 0.02, i -> noise()));
        assertTrue(judge(trials).checks().stream().noneMatch(check -> check.name().equals("places")));
        trials.add(trials.get(7));
        Check places = check(judge(trials), "places");
        assertTrue(places.warns() && places.text().startsWith("One place"), places.text());
    }

    private static Observation paired(String level, int order, String pair, double score) {
        return new Observation(level, "", order, pair, List.of(), score);
    }

    @Test
    void aTrialWithoutPartnerDoesNotCountAndSeveralCountAsTheirMean() {
        List<Observation> trials = List.of(paired("auto", 1, "a", 100), paired("maximum", 2, "a", 103), paired("maximum", 3, "b", 104), paired("auto", 4, "b", 100),
                paired("auto", 5, "c", 101), paired("maximum", 6, "c", 102), paired("maximum", 7, "c", 106), paired("auto", 8, "d", 90));
        Verdict verdict = judge(trials);
        double expected = (Math.log(1.03) + Math.log(1.04) + 0.5 * (Math.log(102) + Math.log(106)) - Math.log(101)) / 3;
        assertEquals(expected, verdict.estimate().orElseThrow().log(), 1e-12);
        assertEquals(List.of(3, 4), verdict.trials());
        assertEquals(2, verdict.checks().stream().filter(check -> check.name().equals("pairs") && check.warns()).count(), verdict.checks().toString());
    }

    /** Six sessions of three trials, the levels one after the other: not to be told from a trend, whatever the rows' order. */
    private Verdict oneAfterTheOther(List<String> labels, boolean shuffled) {
        List<Observation> trials = new ArrayList<>();
        for (int session = 0; session < labels.size(); session++) {
            for (int place = 1; place <= 3; place++) {
                trials.add(new Observation(session < 3 ? "auto" : "maximum", labels.get(session), place, "", List.of(), 100 * Math.exp(noise() + (session < 3 ? 0 : 0.06))));
            }
        }
        if (shuffled) {
            java.util.Collections.shuffle(trials, new java.util.Random(3));
        }
        return Verdicts.judge(Simulated.question(Change.PER_SESSION), trials, RunOrders.unknown(), new SplittableRandom(1));
    }

    @Test
    void theOrderOfSessionsDoesNotHangOnThatOfTheRows() {
        for (List<String> labels : List.of(List.of("2026-01-08", "2026-01-09", "2026-01-10", "2026-01-11", "2026-01-12", "2026-02-01"),
                List.of("8.1.2026", "9.1.2026", "30.1.2026", "1.2.2026", "2.2.2026", "10.12.2026"), List.of("day 8", "day 9", "day 10", "day 11", "day 12", "day 100"))) {
            for (boolean shuffled : new boolean[] {false, true}) {
                assertTrue(oneAfterTheOther(labels, shuffled).reason().contains("a trend over the days"), labels + " " + shuffled);
            }
        }
        List<String> names = List.of("monday", "tuesday", "wednesday", "thursday", "friday", "saturday");
        assertTrue(oneAfterTheOther(names, false).reason().contains("a trend over the days"), "written as run");
        Check order = check(oneAfterTheOther(names, true), "order");
        assertTrue(order.warns() && order.text().contains("cannot be told from their names"), order.text());
    }
}
