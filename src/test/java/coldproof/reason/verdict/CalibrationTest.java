package coldproof.reason.verdict;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.reason.verdict.Situation.Noise;
import coldproof.stats.model.Estimate;
import coldproof.stats.model.TwoGroups;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * How often verdicts are wrong, by simulation: {@code mvn -B verify -Pcalibration}. Writes its table to src/test/calibration/README.md; the same seeds give the
 * same table. Every cell must be nominal or conservative within Monte Carlo error, or the checks must warn in it.
 */
@Tag("calibration")
class CalibrationTest {
    private static final int STUDIES = Integer.getInteger("calibration.studies", 20_000);
    private static final int CHECKED = 400; // studies of a cell whose checks are looked at, which cost a hundred times more
    private static final double ERROR = Math.sqrt(0.05 * 0.95 / STUDIES);

    /** What came out of a cell, as shares. */
    private record Rates(Situation situation, double alarms, double gains, double attained, double naive, double warned) {
        boolean holds() {
            return alarms <= 0.05 + 3.5 * ERROR; // of some fifty cells, one in forty runs would exceed this by chance
        }
    }

    private static List<Situation> situations() {
        List<Situation> all = new ArrayList<>();
        for (boolean byLot : new boolean[] {false, true}) {
            String how = byLot ? ", order by lot" : ", counterbalanced";
            for (Noise noise : List.of(Noise.NORMAL, Noise.DRIFT, Noise.AUTOCORRELATED, Noise.HEAVY)) {
                all.add(new Situation(Stratum.TRIALS, "8 + 8 trials, " + name(noise) + how, new int[] {8, 8}, "", 0, noise, byLot));
                all.add(new Situation(Stratum.PAIRS, "8 pairs, " + name(noise) + how, new int[] {8}, "", 0, noise, byLot));
                all.add(new Situation(Stratum.WITHIN_SESSIONS, "4 sessions of 4, " + name(noise) + how, new int[] {4, 4, 4, 4}, "", 1, noise, byLot));
            }
        }
        for (Noise noise : List.of(Noise.NORMAL, Noise.DRIFT, Noise.AUTOCORRELATED, Noise.HEAVY)) {
            all.add(new Situation(Stratum.TRIALS, "12 + 5 trials, " + name(noise), new int[] {12, 5}, "", 0, noise, true));
            all.add(new Situation(Stratum.WITHIN_SESSIONS, "sessions of 2 to 7, " + name(noise), new int[] {3, 7, 2, 5, 4}, "", 1, noise, true));
        }
        for (boolean byLot : new boolean[] {false, true}) {
            String how = name(Noise.DRIFT_ADJUSTED) + (byLot ? ", order by lot" : ", counterbalanced");
            all.add(new Situation(Stratum.TRIALS, "8 + 8 trials, " + how, new int[] {8, 8}, "", 0, Noise.DRIFT_ADJUSTED, byLot));
            all.add(new Situation(Stratum.WITHIN_SESSIONS, "4 sessions of 4, " + how, new int[] {4, 4, 4, 4}, "", 1, Noise.DRIFT_ADJUSTED, byLot));
        }
        all.add(new Situation(Stratum.WITHIN_SESSIONS, "4 sessions of 4, no session noise", new int[] {4, 4, 4, 4}, "", 0, Noise.NORMAL, false));
        all.add(new Situation(Stratum.WITHIN_SESSIONS, "4 sessions of 4, session noise 5 x run noise", new int[] {4, 4, 4, 4}, "", 5, Noise.NORMAL, false));
        between(all);
        return all;
    }

    private static void between(List<Situation> all) {
        for (int sessions = 2; sessions <= 8; sessions++) {
            String levels = "bc".repeat(sessions);
            all.add(new Situation(Stratum.BETWEEN_SESSIONS, sessions + " + " + sessions + " sessions of 4", fours(2 * sessions), levels, 1, Noise.NORMAL, true));
        }
        for (double sd : new double[] {0, 5}) {
            String how = sd == 0 ? ", no session noise" : ", session noise 5 x run noise";
            all.add(new Situation(Stratum.BETWEEN_SESSIONS, "4 + 4 sessions of 4" + how, fours(8), "bcbcbcbc", sd, Noise.NORMAL, true));
        }
        for (Noise noise : List.of(Noise.DRIFT, Noise.AUTOCORRELATED, Noise.HEAVY, Noise.SESSIONS_HEAVY)) {
            all.add(new Situation(Stratum.BETWEEN_SESSIONS, "4 + 4 sessions of 4, " + name(noise), fours(8), "bcbcbcbc", 1, noise, true));
        }
        for (double sd : new double[] {0, 0.5, 1, 3}) {
            String how = ", session noise " + (sd == Math.rint(sd) ? Integer.toString((int) sd) : Double.toString(sd)) + " x run noise";
            all.add(new Situation(Stratum.BETWEEN_SESSIONS, "5 + 3 sessions of 4" + how, fours(8), "bbbbbccc", sd, Noise.NORMAL, true));
            all.add(new Situation(Stratum.BETWEEN_SESSIONS, "4 + 4 sessions of 1 to 4" + how, new int[] {4, 4, 1, 2, 4, 3, 4, 1}, "bbbbcccc", sd, Noise.NORMAL, true));
            all.add(new Situation(Stratum.BETWEEN_SESSIONS, "4 sessions of 4 + 2 of 1" + how, new int[] {4, 4, 4, 4, 1, 1}, "bbbbcc", sd, Noise.NORMAL, true));
            all.add(new Situation(Stratum.BETWEEN_SESSIONS, "3 + 3 sessions of 1 to 6" + how, new int[] {6, 2, 2, 2, 6, 1}, "bbbccc", sd, Noise.NORMAL, true));
        }
        for (Noise noise : List.of(Noise.DRIFT, Noise.AUTOCORRELATED, Noise.HEAVY)) {
            all.add(new Situation(Stratum.BETWEEN_SESSIONS, "4 + 4 sessions of 1 to 4, " + name(noise), new int[] {4, 4, 1, 2, 4, 3, 4, 1}, "bbbbcccc", 1, noise, true));
        }
    }

    private static int[] fours(int sessions) {
        int[] sizes = new int[sessions];
        Arrays.fill(sizes, 4);
        return sizes;
    }

    private static String name(Noise noise) {
        return switch (noise) {
            case NORMAL -> "normal noise";
            case DRIFT -> "drift of 3 sd";
            case DRIFT_ADJUSTED -> "drift of 3 sd, adjusted for the order";
            case AUTOCORRELATED -> "autocorrelation 0.5";
            case HEAVY -> "heavy tails (t3)";
            case SESSIONS_HEAVY -> "heavy tails of sessions (t3)";
        };
    }

    private static Rates simulate(Situation situation, long seed) {
        SplittableRandom chance = new SplittableRandom(seed);
        Question question = situation.question();
        double effect = situation.plannedEffect();
        int alarms = 0;
        int gains = 0;
        int attained = 0;
        int naive = 0;
        int warned = 0;
        for (int study = 0; study < STUDIES; study++) {
            List<Observation> trials = situation.study(chance);
            Arrangement arrangement = new Arrangement(question, trials);
            assertEquals(situation.layout(), arrangement.stratum());
            Estimate estimate = new Analyst(question, arrangement).analyse(situation.layout()).estimate();
            alarms += estimate.p() < 0.05 ? 1 : 0;
            gains += estimate.interval(0.95).low() > 0 ? 1 : 0;
            attained += estimate.interval(0.95).low() + effect > 0 ? 1 : 0; // a change adds to the estimate and leaves its error alone
            double[] baseline = LogScores.of(arrangement.of("b"), question.better());
            double[] against = LogScores.of(arrangement.of("c"), question.better());
            naive += TwoGroups.pooled(baseline, against).p() < 0.05 ? 1 : 0;
            warned += study < CHECKED && Checks.of(question, situation.layout(), arrangement).stream().anyMatch(Check::warns) ? 1 : 0;
        }
        return new Rates(situation, share(alarms), share(gains), share(attained), share(naive), (double) warned / CHECKED);
    }

    private static double share(int count) {
        return (double) count / STUDIES;
    }

    @Test
    void everyCellIsNominalOrConservativeOrWarnedOf() throws IOException {
        List<Situation> situations = situations();
        List<Rates> rates = IntStream.range(0, situations.size()).parallel().mapToObj(i -> simulate(situations.get(i), 1000 + i)).toList();
        Path folder = Path.of("src", "test", "calibration");
        Files.createDirectories(folder);
        Path file = STUDIES == 20_000 ? folder.resolve("README.md") : Path.of("target", "fewer-studies.md");
        Files.writeString(file, table(rates), StandardCharsets.UTF_8);
        for (Rates rate : rates) {
            assertTrue(rate.holds() || rate.warned() >= 0.5, rate.situation().words() + ": " + rate.alarms() + " false alarms, warned in " + rate.warned());
            boolean clean = rate.situation().words().matches("8 \\+ 8 trials, normal.*|8 pairs, normal.*|4 sessions of 4, normal.*|\\d \\+ \\d sessions of 4");
            if (clean) { // exact theory holds here: both sides
                assertEquals(0.05, rate.alarms(), 4 * ERROR, rate.situation().words());
                assertEquals(0.9, rate.attained(), 4 * Math.sqrt(0.9 * 0.1 / STUDIES), rate.situation().words());
            }
        }
    }

    private static String table(List<Rates> rates) {
        StringBuilder out = new StringBuilder(String.format(Locale.ROOT, """
                # How often verdicts are wrong

                Made by `mvn -B verify -Pcalibration` (`CalibrationTest`): %,d simulated studies a row, the same seeds each time, false alarm set to 5 %%,
                run-to-run noise 1 %%, session noise as large as run noise unless said otherwise. Monte Carlo standard error of a 5 %% rate: %.2f %%.

                - *false alarm*: a change is called where there is none, either way. *gain*: the half of them that would be called a gain (nominal 2.5 %%).
                - *coverage*: 95 %% intervals that hold the true change.
                - *power*: a gain is seen when the true change is the one that the exact formulas give 90 %% for that layout with normal, independent noise
                  (for uneven sessions: of sessions of the mean size).
                - *naive*: false alarms of the t test that takes every trial as independent.
                - *warned*: studies in which a check warned (of %d looked at).
                - **!**: above 5 %% by more than three and a half standard errors; the checks must warn there in at least half of the studies, or the run fails.

                | layout | situation | false alarm | gain | coverage | power | naive | warned |
                |---|---|---:|---:|---:|---:|---:|---:|
                """, STUDIES, 100 * ERROR, CHECKED));
        for (Rates rate : rates) {
            out.append(String.format(Locale.ROOT, "| %s | %s | %.2f %%%s | %.2f %% | %.2f %% | %.1f %% | %.1f %% | %.0f %% |\n", rate.situation().layout().words(),
                    rate.situation().words(), 100 * rate.alarms(), rate.holds() ? "" : " **!**", 100 * rate.gains(), 100 * (1 - rate.alarms()), 100 * rate.attained(),
                    100 * rate.naive(), 100 * rate.warned()));
        }
        return out.toString();
    }
}
