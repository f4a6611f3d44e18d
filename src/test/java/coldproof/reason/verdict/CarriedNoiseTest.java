package coldproof.reason.verdict;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.plan.Better;
import coldproof.plan.Change;
import coldproof.plan.Claim;
import coldproof.plan.NoiseAssumption;
import coldproof.quantity.LogRatio;
import coldproof.stats.distribution.StudentT;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** What noise from a pilot can and cannot do for a verdict. */
class CarriedNoiseTest {
    private static final NoiseAssumption PILOT =
            new NoiseAssumption(1.2, 0.8, OptionalDouble.of(9), OptionalDouble.of(5), OptionalDouble.of(4), "pilot");
    private static final NoiseAssumption GUESS = new NoiseAssumption(1.2, 0.8, OptionalDouble.empty(), OptionalDouble.empty(), "guess");

    private static Question question(Optional<NoiseAssumption> noise, boolean pools, Change change) {
        return new Question("ambient", "room", "chilled", Better.HIGHER, 3, Claim.GAIN, 0.05, Optional.of(change), noise, pools, 0.9);
    }

    private static Verdict judge(Question question, List<Observation> trials) {
        return Verdicts.judge(question, trials, RunOrders.unknown(), new SplittableRandom(1));
    }

    /** One session of each letter, four trials each; the log means differ by {@code effect}, trials by +-1 %. */
    private static List<Observation> sessions(String levels, double effect) {
        List<Observation> trials = new ArrayList<>();
        for (int session = 0; session < levels.length(); session++) {
            boolean chilled = levels.charAt(session) == 'c';
            for (int i = 0; i < 4; i++) {
                double log = (chilled ? effect : 0) + (i % 2 == 0 ? 0.01 : -0.01) + 0.01 * (session % 3 - 1);
                trials.add(new Observation(chilled ? "chilled" : "room", Integer.toString(session + 1), i, "", List.of(), 100 * Math.exp(log)));
            }
        }
        return trials;
    }

    @Test
    void oneSessionALevelPassesOnlyWithNoiseThatWasMeasured() {
        List<Observation> trials = sessions("rc", 0.2);
        assertEquals(Decision.UNDECIDED, judge(question(Optional.empty(), false, Change.PER_SESSION), trials).decision());
        assertEquals(Decision.UNDECIDED, judge(question(Optional.of(GUESS), false, Change.PER_SESSION), trials).decision());
        Verdict decided = judge(question(Optional.of(PILOT), false, Change.PER_SESSION), trials);
        assertEquals(Decision.PASS, decided.decision());
        assertTrue(decided.method().contains("pilot"), decided.method());
        assertEquals("pilot", decided.carried().orElseThrow().from());
        assertTrue(decided.checks().stream().anyMatch(check -> check.name().equals("carried-in noise")));
    }

    /**
     * By hand: variance of a session mean s^2 + r^2 / 4 with log sd of 0.8 and 1.2 %. Sessions and trials are as many as in the pilot, so that this is the
     * pilot's session mean square over 4 and has its 5 degrees of freedom, exactly.
     */
    @Test
    void theStandardErrorAndItsDegreesOfFreedomAreThoseOfThePilot() {
        Verdict verdict = judge(question(Optional.of(PILOT), false, Change.PER_SESSION), sessions("rc", 0.05));
        double run = LogRatio.logSdOfCv(1.2);
        double session = LogRatio.logSdOfCv(0.8);
        double error = Math.sqrt(2 * (session * session + run * run / 4));
        assertEquals(error, verdict.estimate().orElseThrow().standardError(), 1e-12);
        assertEquals(5, verdict.estimate().orElseThrow().degreesOfFreedom(), 1e-9);
        assertEquals(0.05 + 0.01, verdict.estimate().orElseThrow().log(), 1e-12);
        assertEquals(2 * StudentT.survival(0.06 / error, 5), verdict.estimate().orElseThrow().p(), 1e-12);
    }

    /** Three sessions of one level have two degrees of freedom of their own, which count too. */
    @Test
    void sessionsOfTheOtherLevelAddTheirDegreesOfFreedom() {
        Verdict verdict = judge(question(Optional.of(PILOT), false, Change.PER_SESSION), sessions("rrcr", 0.05));
        assertEquals(7, verdict.estimate().orElseThrow().degreesOfFreedom(), 1e-9);
        assertEquals(2, verdict.carried().orElseThrow().ownDegreesOfFreedom());
    }

    @Test
    void carriedNoiseIsLeftAloneWhereSessionsHaveTheirOwnUnlessAskedFor() {
        List<Observation> trials = sessions("rccrrc", 0.05);
        Verdict own = judge(question(Optional.of(PILOT), false, Change.PER_SESSION), trials);
        Verdict pooled = judge(question(Optional.of(PILOT), true, Change.PER_SESSION), trials);
        assertTrue(own.carried().isEmpty());
        assertEquals(4, own.estimate().orElseThrow().degreesOfFreedom());
        assertEquals(9, pooled.estimate().orElseThrow().degreesOfFreedom(), 1e-9);
        assertEquals(own.estimate().orElseThrow().log(), pooled.estimate().orElseThrow().log(), 1e-12);
    }

    @Test
    void noiseThatIsNotTheSameIsWarnedOf() {
        NoiseAssumption quiet = new NoiseAssumption(0.05, 0.02, OptionalDouble.of(40), OptionalDouble.of(20), "another device");
        Verdict verdict = judge(question(Optional.of(quiet), true, Change.PER_SESSION), sessions("rccrrc", 0.05));
        Check check = verdict.checks().stream().filter(one -> one.name().equals("carried-in noise")).findFirst().orElseThrow();
        assertTrue(check.warns(), check.text());
        Verdict alike = judge(question(Optional.of(PILOT), true, Change.PER_SESSION), sessions("rccrrc", 0.05));
        assertFalse(alike.checks().stream().filter(one -> one.name().equals("carried-in noise")).findFirst().orElseThrow().warns());
    }

    /** 4,000 studies of one session a level without a change, each with a pilot of its own: 5 % are called one, within Monte Carlo error. */
    @Test
    void withAPilotTheFalseAlarmRateHolds() {
        SplittableRandom chance = new SplittableRandom(3);
        int studies = 4000;
        int alarms = 0;
        for (int study = 0; study < studies; study++) {
            double meanSquare = 0; // of six pilot sessions of four trials: 5 degrees of freedom
            for (int i = 0; i < 5; i++) {
                meanSquare += square(Simulated.normal(chance)) / 5;
            }
            double runSquare = 0;
            for (int i = 0; i < 18; i++) {
                runSquare += square(Simulated.normal(chance)) / 18;
            }
            double run = 0.01 * Math.sqrt(runSquare);
            double session = Math.sqrt(Math.max(0, 5 * 1e-4 * meanSquare - run * run) / 4); // true: run 1 %, session 1 %, so E(MS) = 5e-4
            NoiseAssumption noise = new NoiseAssumption(LogRatio.cvPercentOfLogSd(run), LogRatio.cvPercentOfLogSd(session), OptionalDouble.of(18),
                    OptionalDouble.of(5), OptionalDouble.of(4), "pilot");
            List<Observation> trials = new ArrayList<>();
            for (int s = 0; s < 2; s++) {
                double day = 0.01 * Simulated.normal(chance);
                for (int i = 0; i < 4; i++) {
                    trials.add(new Observation(s == 0 ? "room" : "chilled", Integer.toString(s), i, "", List.of(), Math.exp(day + 0.01 * Simulated.normal(chance))));
                }
            }
            Question asked = question(Optional.of(noise), false, Change.PER_SESSION);
            alarms += new Analyst(asked, new Arrangement(asked, trials)).analyse(Stratum.BETWEEN_SESSIONS).estimate().p() < 0.05 ? 1 : 0;
        }
        assertEquals(0.05, (double) alarms / studies, 3.5 * Math.sqrt(0.05 * 0.95 / studies)); // fixed seed
    }

    private static double square(double value) {
        return value * value;
    }
}
