package coldproof.reason.rehearse;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.plan.Claim;
import coldproof.plan.Order;
import coldproof.plan.Plan;
import coldproof.reason.rehearse.bench.NormalDraws;
import coldproof.reason.sizing.PilotAdvice;
import coldproof.reason.sizing.PilotAdvice.Pilot;
import coldproof.reason.sizing.PilotSearch;
import coldproof.reason.sizing.PlanSize;
import coldproof.stats.Tail;
import coldproof.stats.power.Allocation;
import coldproof.stats.power.Assurance;
import coldproof.stats.power.Claim.Difference;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class PilotSearchTest {
    private static PilotAdvice advice(Plan plan) {
        return PilotSearch.of(plan, Plans.sheet(plan));
    }

    static Stream<Plan> plans() {
        return Stream.of(Plans.sessions(5, 4, 2, 0.8, Claim.GAIN), Plans.sessions(6, 6, 1, 0.3, Claim.SAME), Plans.within(3, 2, Claim.GAIN),
                Plans.alternating(8, 8, Order.COUNTERBALANCED, Claim.GAIN), Plans.paired(10, Order.RANDOMISED, Claim.GAIN));
    }

    @ParameterizedTest
    @MethodSource("plans")
    void powerAtAPointIsThatOfThePlan(Plan plan) {
        assertEquals(PlanSize.of(plan, Plans.sheet(plan)).size().orElseThrow().power(), advice(plan).power(), 1e-9);
    }

    @ParameterizedTest
    @MethodSource("plans")
    void aLargerPilotLeavesLessToChance(Plan plan) {
        PilotAdvice advice = advice(plan);
        List<Pilot> pilots = advice.pilots();
        for (Pilot one : pilots) {
            for (Pilot other : pilots) {
                if (one.sessions() <= other.sessions() && one.trials() <= other.trials()) {
                    assertTrue(one.degreesOfFreedom() <= other.degreesOfFreedom() + 1e-9, one + " " + other);
                    assertTrue(one.noise().high() >= other.noise().high() - 1e-9, one + " " + other);
                }
            }
            assertTrue(one.assurance() < advice.power(), "a plan of high power loses by what is not known: " + one);
        }
    }

    @ParameterizedTest
    @MethodSource("plans")
    void theBestPilotIsTheCheapestWithItsStudy(Plan plan) {
        PilotAdvice advice = advice(plan);
        double least = advice.pilots().stream().filter(pilot -> pilot.needed().isPresent()).mapToDouble(Pilot::minutesInAll).min().orElseThrow();
        assertEquals(least, advice.best().orElseThrow().minutesInAll());
    }

    /** 80 % of true deviations lie in it, when s / sigma is drawn as sqrt(chi-square / df); 20,000 draws, 3.9 deviations of the count. */
    @Test
    void theNoiseLiesWhereThePilotSays() {
        Pilot pilot = advice(Plans.alternating(8, 8, Order.COUNTERBALANCED, Claim.GAIN)).pilots().get(2);
        assertEquals(5, pilot.degreesOfFreedom());
        NormalDraws draws = new NormalDraws(new SplittableRandom(3));
        int inside = 0;
        for (int i = 0; i < 20_000; i++) {
            double squares = 0;
            for (int j = 0; j < 5; j++) {
                double z = draws.next();
                squares += z * z;
            }
            inside += pilot.noise().contains(1 / Math.sqrt(squares / 5)) ? 1 : 0;
        }
        assertEquals(0.8, inside / 20_000.0, 3.9 * Math.sqrt(0.16 / 20_000));
    }

    /** The general form against the one for two groups, which AssuranceTest checks against another program. */
    @Test
    void assuranceByStandardErrorIsThatOfTwoGroups() {
        Difference claim = new Difference(0.03, 0.05, Tail.TWO);
        Assurance.Estimate noise = new Assurance.Estimate(0.014, 6);
        assertEquals(Assurance.ofTwoGroups(claim, noise, new Allocation(7, 5)), Assurance.of(claim, noise, Math.sqrt(1 / 7.0 + 1 / 5.0), 10), 1e-12);
    }
}
