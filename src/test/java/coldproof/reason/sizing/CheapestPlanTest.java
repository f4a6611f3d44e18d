package coldproof.reason.sizing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.reason.sizing.StudyLimits.Limit;
import coldproof.stats.distribution.NoncentralT;
import coldproof.stats.distribution.StudentT;
import java.util.Comparator;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CheapestPlanTest {
    private static final double MINUTE = 60;
    private static final StudyCost COLD = new StudyCost(6 * MINUTE, new SessionCost(25 * MINUTE, false),
            new SessionCost(35 * MINUTE, true), 20 * MINUTE, 4, 2, 3);

    private static DecisionPower gain(double logEffect) {
        return (standardError, degrees) -> {
            double critical = StudentT.upperPoint(0.025, degrees);
            double ncp = logEffect / standardError;
            return NoncentralT.survival(critical, degrees, ncp) + NoncentralT.cdf(-critical, degrees, ncp);
        };
    }

    private static PlanSpace sessions(double runLogSd, double sessionLogSd, StudyCost cost) {
        return PlanSpace.ofSessionFactor(runLogSd, sessionLogSd, 1, cost);
    }

    /** Every plan looked at one by one, its power asked for directly. */
    private static Optional<PlannedStudy> oneByOne(PlanSpace space, StudyLimits limits, DecisionPower power, double wanted) {
        PlannedStudy best = null;
        for (int against = 1; against <= limits.count(Limit.SESSIONS_PER_LEVEL); against++) {
            for (int baseline = 1; baseline <= limits.count(Limit.SESSIONS_PER_LEVEL); baseline++) {
                for (int trials = 1; trials <= limits.count(Limit.TRIALS_PER_CONDITION); trials++) {
                    boolean odd = baseline < 2 || against < 2 || space.sharesSessions() && baseline != against;
                    Candidate plan = Candidate.of(space, baseline, against, trials, limits);
                    if (odd || !plan.fits() || plan.degrees() < 1) {
                        continue;
                    }
                    double reached = power.of(plan.standardErrorLog(), plan.degrees());
                    if (reached >= wanted && (best == null || plan.weightedSeconds() < best.weightedSeconds())) {
                        best = plan.planned(reached);
                    }
                }
            }
        }
        return Optional.ofNullable(best);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
    void theCheapestOfAllIsFound(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        StudyCost cost = new StudyCost(random.nextDouble(60, 600), new SessionCost(random.nextDouble(0, 3000), random.nextInt(4) == 0),
                new SessionCost(random.nextDouble(0, 4000), random.nextBoolean()), random.nextDouble(0, 3600), random.nextDouble(1, 5),
                random.nextDouble(0, 3), random.nextDouble(0, 3));
        PlanSpace space = new PlanSpace(random.nextInt(3) == 0, random.nextDouble(0.004, 0.02), random.nextDouble(0, 0.015),
                random.nextInt(1, 3), 2, cost);
        StudyLimits limits = StudyLimits.NONE.with(Limit.SESSIONS_PER_LEVEL, 12).with(Limit.TRIALS_PER_CONDITION, 7);
        limits = random.nextBoolean() ? limits.with(Limit.OUTDOORS_IN_ALL, random.nextDouble(5_000, 60_000)) : limits;
        limits = random.nextBoolean() ? limits.with(Limit.BATTERY, random.nextDouble(8, 40)) : limits;
        limits = random.nextBoolean() ? limits.with(Limit.DAYS, random.nextInt(3, 9)) : limits;
        DecisionPower power = gain(0.025);
        Optional<PlannedStudy> expected = oneByOne(space, limits, power, 0.9);
        Optional<PlannedStudy> found = CheapestPlan.search(space, limits, power, 0.9).best();
        assertEquals(expected.map(PlannedStudy::weightedSeconds), found.map(PlannedStudy::weightedSeconds), "seed " + seed);
        found.ifPresent(plan -> assertTrue(plan.power() >= 0.9));
    }

    /** sqrt(20/3) times the ratio of the noises, after Kalibera and Jones 2013 (from memory), for trials of 3 and openings of 20 min. */
    @ParameterizedTest
    @CsvSource({"0.01, 0.01, 2.58", "0.02, 0.01, 5.16", "0.01, 0.02, 1.29"})
    void theContinuousOptimumIsThatOfTheLiterature(double runLogSd, double sessionLogSd, double expected) {
        StudyCost cost = new StudyCost(3 * MINUTE, new SessionCost(20 * MINUTE, false), new SessionCost(20 * MINUTE, false), 0, 1, 0, 0);
        PlanAdvice advice = CheapestPlan.search(sessions(runLogSd, sessionLogSd, cost), StudyLimits.NONE, gain(0.03), 0.9);
        assertEquals(expected, advice.trialsOptimum(), 0.005);
        assertEquals(1, advice.ratioOptimum(), 1e-12);
        // efficiency is flat, so the whole optimum may lie a factor of two away, not more
        int trials = advice.best().orElseThrow().trialsPerCondition();
        assertTrue(trials >= expected / 2.1 && trials <= expected * 2.1, trials + " trials");
    }

    /** k sessions a level, r trials each, change 0.03, noise 0.01 both ways: SciPy 1.17.1, nct of ncp 0.03/se and 2k - 2 df, both tails. */
    @ParameterizedTest
    @CsvSource({"2, 1, 0.23713049746347348", "2, 10, 0.3624719039919319", "3, 3, 0.6676174014272708", "4, 3, 0.8621032538872073",
        "4, 5, 0.8942986084947186", "6, 3, 0.9810908530123189"})
    void precisionOfSessionsIsThatOfTheSplitPlot(int perLevel, int trials, double expected) {
        PlanSpace space = sessions(0.01, 0.01, COLD);
        Candidate plan = Candidate.of(space, perLevel, perLevel, trials, StudyLimits.NONE);
        assertEquals(expected, gain(0.03).of(plan.standardErrorLog(), plan.degrees()), 1e-11); // two quadratures
    }

    /** A session factor 4 times as costly on one side is best studied with about twice the sessions on the other. */
    @Test
    void dearSessionsAreFewer() {
        StudyCost cost = new StudyCost(1, new SessionCost(1000, false), new SessionCost(4000, true), 0, 1, 0, 0);
        PlanAdvice advice = CheapestPlan.search(sessions(0.01, 0.015, cost), StudyLimits.NONE, gain(0.02), 0.95);
        PlannedStudy best = advice.best().orElseThrow();
        assertEquals(2, advice.ratioOptimum(), 0.03); // the trials cost a little too, the same on both sides
        assertEquals(2, best.baselineSessions() / (double) best.againstSessions(), 0.35);
        PlannedStudy equal = advice.equal().orElseThrow();
        assertTrue(best.outdoorsSeconds() < equal.outdoorsSeconds() && best.weightedSeconds() < equal.weightedSeconds());
    }

    @Test
    void pricesAddUpByHand() {
        Candidate plan = Candidate.of(sessions(0.01, 0.01, COLD), 5, 3, 2, StudyLimits.NONE);
        double outdoors = 3 * (35 + 2 * 6);
        double inAll = outdoors + 5 * (25 + 2 * 6) + 3 * 20;
        assertEquals(outdoors * MINUTE, plan.outdoorsSeconds(), 1e-9);
        assertEquals(inAll * MINUTE, plan.totalSeconds(), 1e-9);
        assertEquals((inAll + 3 * outdoors) * MINUTE, plan.weightedSeconds(), 1e-9);
        assertEquals(16, plan.trials());
        assertEquals(3, plan.outings());
        StudyLimits two = StudyLimits.NONE.with(Limit.SESSIONS_PER_OUTING, 2);
        assertEquals(2, Candidate.of(sessions(0.01, 0.01, COLD), 5, 3, 2, two).outings());
        StudyLimits oneCharge = two.with(Limit.BATTERY, 2 + 2 * 3);
        assertEquals(3, Candidate.of(sessions(0.01, 0.01, COLD), 5, 3, 2, oneCharge).outings());
    }

    @ParameterizedTest
    @CsvSource({"OUTDOORS_PER_OUTING, 46", "OUTDOORS_IN_ALL, 140", "DAYLIGHT, 66", "TIME_IN_ALL, 385"})
    void aPlanJustOverALimitDoesNotFit(Limit limit, double minutes) {
        PlanSpace space = sessions(0.01, 0.01, COLD); // 47 min a session outdoors, 67 with the way, 141 in all, 386 with everything
        assertTrue(!Candidate.of(space, 5, 3, 2, StudyLimits.NONE.with(limit, minutes * MINUTE)).fits());
        assertTrue(Candidate.of(space, 5, 3, 2, StudyLimits.NONE.with(limit, (minutes + 1) * MINUTE)).fits());
    }

    @Test
    void daysAndBatteryLimitToo() {
        PlanSpace space = sessions(0.01, 0.01, COLD);
        assertTrue(!Candidate.of(space, 5, 3, 2, StudyLimits.NONE.with(Limit.DAYS, 2)).fits());
        assertTrue(Candidate.of(space, 5, 3, 2, StudyLimits.NONE.with(Limit.DAYS, 3)).fits());
        StudyLimits twice = StudyLimits.NONE.with(Limit.OUTINGS_PER_DAY, 2);
        assertTrue(Candidate.of(space, 5, 3, 2, twice.with(Limit.DAYS, 2)).fits());
        assertTrue(!Candidate.of(space, 5, 3, 2, twice.with(Limit.DAYS, 2).with(Limit.DAYLIGHT, 130 * MINUTE)).fits());
        assertTrue(!Candidate.of(space, 5, 3, 2, StudyLimits.NONE.with(Limit.BATTERY, 7.9)).fits());
        assertTrue(Candidate.of(space, 5, 3, 2, StudyLimits.NONE.with(Limit.BATTERY, 8)).fits());
    }

    @Test
    void whatBindsIsNamedWithWhatItCosts() {
        PlanSpace space = sessions(0.012, 0.008, COLD);
        PlanAdvice free = CheapestPlan.search(space, StudyLimits.NONE, gain(0.03), 0.9);
        double tight = free.best().orElseThrow().outdoorsSeconds() * 0.8;
        StudyLimits limits = StudyLimits.NONE.with(Limit.OUTDOORS_IN_ALL, tight).with(Limit.TIME_IN_ALL, 1e6);
        PlanAdvice bound = CheapestPlan.search(space, limits, gain(0.03), 0.9);
        assertTrue(bound.best().orElseThrow().outdoorsSeconds() <= tight);
        assertTrue(bound.best().orElseThrow().weightedSeconds() > free.best().orElseThrow().weightedSeconds());
        assertEquals(free.best().orElseThrow(), bound.lifted().get(Limit.OUTDOORS_IN_ALL));
        assertTrue(!bound.lifted().containsKey(Limit.TIME_IN_ALL));
    }

    @Test
    void whatCannotBeReachedIsSaidWithTheStrongestThereIs() {
        StudyLimits limits = StudyLimits.NONE.with(Limit.OUTDOORS_IN_ALL, 100 * MINUTE);
        PlanAdvice advice = CheapestPlan.search(sessions(0.012, 0.008, COLD), limits, gain(0.015), 0.9);
        assertTrue(advice.best().isEmpty());
        PlannedStudy strongest = advice.strongest().orElseThrow();
        assertEquals(2, strongest.againstSessions());
        assertEquals(40, strongest.baselineSessions());
        assertTrue(strongest.power() > 0.05 && strongest.power() < 0.9);
        assertTrue(advice.lifted().containsKey(Limit.OUTDOORS_IN_ALL));
    }

    @Test
    void noPlanOfTheFrontierIsBeatenByAnother() {
        PlanAdvice advice = CheapestPlan.search(sessions(0.012, 0.008, COLD), StudyLimits.NONE, gain(0.03), 0.9);
        double stretch = CheapestPlan.FRONTIER_STRETCH * advice.best().orElseThrow().weightedSeconds();
        assertTrue(advice.frontier().size() > 4, advice.frontier().size() + " plans");
        PlannedStudy before = null;
        for (PlannedStudy plan : advice.frontier()) {
            assertTrue(plan.weightedSeconds() <= stretch);
            assertTrue(before == null || plan.outdoorsSeconds() > before.outdoorsSeconds() && plan.power() > before.power());
            before = plan;
        }
        double best = advice.frontier().stream().filter(plan -> plan.power() >= 0.9)
                .min(Comparator.comparingDouble(PlannedStudy::outdoorsSeconds)).orElseThrow().outdoorsSeconds();
        assertTrue(best <= advice.best().orElseThrow().outdoorsSeconds());
    }

    /** Strata of a factor set per trial inside k sessions: trials less sessions less one. */
    @Test
    void sharedSessionsLeaveTheDegreesOfTheRunStratum() {
        PlanSpace space = PlanSpace.ofTrialFactor(0.01, 1, COLD);
        Candidate plan = Candidate.of(space, 3, 3, 4, StudyLimits.NONE);
        assertEquals(24, plan.trials());
        assertEquals(20, plan.degrees());
        assertEquals(Math.sqrt(2 * 1e-4 / 12), plan.standardErrorLog(), 1e-15);
        PlanAdvice advice = CheapestPlan.search(space, StudyLimits.NONE, gain(0.02), 0.9);
        assertEquals(1, advice.best().orElseThrow().againstSessions()); // opening is dear, trials are cheap, and the session cancels
    }

    @Test
    void moreOfEverythingNeverCostsMore() {
        PlanSpace space = sessions(0.012, 0.008, COLD);
        double before = 0;
        for (double wanted : new double[] {0.5, 0.7, 0.8, 0.9, 0.95, 0.99}) {
            double price = CheapestPlan.search(space, StudyLimits.NONE, gain(0.03), wanted).best().orElseThrow().weightedSeconds();
            assertTrue(price >= before);
            before = price;
        }
    }
}
