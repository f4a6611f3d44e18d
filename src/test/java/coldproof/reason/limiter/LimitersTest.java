package coldproof.reason.limiter;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.reason.rehearse.bench.Bench;
import coldproof.reason.rehearse.bench.BenchCondition;
import coldproof.reason.rehearse.bench.BenchParameters;
import coldproof.reason.rehearse.bench.BenchSession;
import coldproof.reason.rehearse.bench.BenchStudy;
import coldproof.reason.rehearse.bench.Fan;
import coldproof.reason.rehearse.bench.HeldBy;
import coldproof.reason.rehearse.bench.InventedDevices;
import coldproof.reason.rehearse.bench.Supply;
import coldproof.reason.rehearse.bench.Workload;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class LimitersTest {
    private static final BenchCondition ROOM = BenchCondition.room(21);
    private static final BenchCondition FROST = BenchCondition.outdoors(-8);

    /** Two sessions of three trials under each condition, with loops. */
    private static LimiterAnswer explain(BenchParameters device, KnownLimits known, Map<String, BenchCondition> conditions) {
        BenchStudy study = Bench.of(device).study(new SplittableRandom(7));
        List<LimiterTrial> trials = new ArrayList<>();
        for (int round = 0; round < 2; round++) {
            for (Map.Entry<String, BenchCondition> condition : conditions.entrySet()) {
                BenchSession session = study.session(condition.getValue());
                for (int i = 0; i < 3; i++) {
                    trials.add(BenchLimiterTrials.of(session.run(condition.getValue()), Map.of("setting", condition.getKey()), condition.getKey() + round, trials.size(),
                            true, true));
                }
            }
        }
        return Limiters.explain(trials, known);
    }

    private static Map<String, BenchCondition> pair(BenchCondition before, BenchCondition after) {
        Map<String, BenchCondition> conditions = new LinkedHashMap<>();
        conditions.put("before", before);
        conditions.put("after", after);
        return conditions;
    }

    private static List<Limiter> limiters(BenchParameters device, BenchCondition before, BenchCondition after) {
        return explain(device, KnownLimits.NONE, pair(before, after)).conditions().stream().map(LimiterAnswer.OfCondition::limiter).toList();
    }

    @Test
    void aHeatLimitThatGivesWayToPowerInTheColdIsSeen() {
        assertEquals(List.of(Limiter.HEAT, Limiter.POWER), limiters(InventedDevices.trailLaptop(), ROOM, FROST));
        assertEquals(List.of(Limiter.HEAT, Limiter.POWER), limiters(InventedDevices.workshopLaptop(), ROOM, ROOM.with(Fan.Setting.MAXIMUM)));
    }

    @Test
    void aFewPercentInTheColdUnderAPowerLimitAreCalledLeakage() {
        LimiterAnswer answer = explain(InventedDevices.shelfDesktop(), KnownLimits.NONE, pair(ROOM, FROST));
        assertEquals(List.of(Limiter.POWER, Limiter.POWER), answer.conditions().stream().map(LimiterAnswer.OfCondition::limiter).toList());
        assertTrue(answer.conditions().get(1).evidence().stream().anyMatch(text -> text.contains("leakage")), () -> answer.conditions().get(1).evidence().toString());
    }

    @Test
    void aClockCeilingIsSeen() {
        assertEquals(List.of(Limiter.CLOCK, Limiter.CLOCK), limiters(InventedDevices.steadyBox(), ROOM, FROST));
    }

    @Test
    void workThatWaitsIsSeen() {
        assertEquals(List.of(Limiter.WORKLOAD, Limiter.WORKLOAD), limiters(InventedDevices.waitingStation(), ROOM, FROST));
    }

    @Test
    void aWeakSupplyIsSeenOnBothSources() {
        BenchParameters tablet = InventedDevices.ferryTablet();
        assertEquals(List.of(Limiter.SUPPLY, Limiter.SUPPLY), limiters(tablet, FROST.with(Supply.Source.BATTERY), ROOM.with(Supply.Source.BATTERY)));
        KnownLimits stated = new KnownLimits(OptionalDouble.of(95), OptionalDouble.of(32), OptionalDouble.of(3800));
        assertEquals(Limiter.SUPPLY, explain(tablet, stated, pair(ROOM, FROST)).conditions().get(0).limiter());
    }

    /**
     * Truth: the simulator itself, asked in air 4 K to either side of the answer. The fan is pinned and the air's density moves the
     * resistance by 2 % within 10 K, which the headroom leaves aside; hence 4 K.
     */
    @Test
    void theHeadroomIsWhereTheLimiterTrulyChanges() {
        BenchParameters device = InventedDevices.workshopLaptop();
        BenchCondition fast = ROOM.with(Fan.Setting.MAXIMUM);
        KnownLimits stated = new KnownLimits(OptionalDouble.of(97), OptionalDouble.of(80), OptionalDouble.empty());
        LimiterAnswer.OfCondition answer = explain(device, stated, Map.of("fast", fast)).conditions().get(0);
        assertEquals(Limiter.POWER, answer.limiter());
        Headroom headroom = answer.headroom().orElseThrow();
        assertEquals(Limiter.HEAT, headroom.then());
        Bench bench = Bench.of(device);
        assertEquals(Optional.of(HeldBy.POWER), bench.truth(BenchCondition.room(headroom.airCelsius() - 4).with(Fan.Setting.MAXIMUM)).limiter());
        assertEquals(Optional.of(HeldBy.HEAT), bench.truth(BenchCondition.room(headroom.airCelsius() + 4).with(Fan.Setting.MAXIMUM)).limiter());
    }

    @Test
    void whatTheTrialsCannotTellIsLeftOpenWithTheExperimentThatWould() {
        BenchParameters tablet = InventedDevices.ferryTablet();
        LimiterAnswer answer = explain(tablet, KnownLimits.NONE, Map.of("wall", ROOM));
        assertEquals(Limiter.UNCLEAR, answer.conditions().get(0).limiter()); // pinned power without a boost: adapter or power limit
        assertTrue(answer.next().contains("another power source"), answer.next());
        assertTrue(answer.predictions().stream().allMatch(one -> one.levels().isEmpty() && one.result() == Prediction.Result.UNTESTED));
    }

    @Test
    void everyPredictionNamesItsChangeAndItsOutcome() {
        LimiterAnswer answer = explain(InventedDevices.trailLaptop(), KnownLimits.NONE, pair(ROOM, FROST));
        Prediction heat = answer.predictions().stream().filter(one -> one.hypothesis() == Hypothesis.HEAT && one.levels().containsValue("before")
                && one.quantity().equals("power")).findFirst().orElseThrow();
        assertEquals("colder air (setting before to after)", heat.change());
        assertEquals(Prediction.Result.SUPPORTED, heat.result());
        Prediction power = answer.predictions().stream().filter(one -> one.hypothesis() == Hypothesis.POWER && one.levels().containsValue("before")
                && one.quantity().equals("power")).findFirst().orElseThrow();
        assertEquals(Prediction.Result.RULED_OUT, power.result());
        assertTrue(answer.ruledOut().stream().anyMatch(text -> text.startsWith("supply under setting before")), () -> answer.ruledOut().toString());
    }

    /** The same device with work that switches less of the chip, in its own sessions. */
    private static BenchParameters lightened(BenchParameters device) {
        Workload work = device.workload();
        return device.with(new Workload(work.workSeconds(), work.loops(), work.leadSeconds(), work.tailSeconds(), 3 * work.rateAtHighest(), work.rateExponent(),
                work.rateCapShare(), work.bound(), 0.6 * work.activity(), work.activitySwing()));
    }

    private static LimiterAnswer underTwoLoads(BenchParameters device) {
        List<LimiterTrial> trials = new ArrayList<>();
        for (int round = 0; round < 2; round++) {
            for (String load : List.of("full", "light")) {
                BenchSession session = Bench.of(load.equals("full") ? device : lightened(device)).study(new SplittableRandom(3 + round)).session(ROOM);
                for (int i = 0; i < 3; i++) {
                    trials.add(BenchLimiterTrials.of(session.run(ROOM), Map.of("load", load), load + round, trials.size(), true, true));
                }
            }
        }
        KnownLimits stated = new KnownLimits(OptionalDouble.of(device.limits().temperatureCelsius()), OptionalDouble.of(device.limits().longTermWatts()),
                OptionalDouble.empty());
        return Limiters.explain(trials, stated);
    }

    private static Prediction.Result ofTheClock(LimiterAnswer answer, Hypothesis hypothesis) {
        return answer.predictions().stream().filter(one -> one.hypothesis() == hypothesis && one.change().equals("lighter load (load full to light)")
                && one.quantity().equals("clock")).findFirst().orElseThrow().result();
    }

    /** Under a power limit lighter work lets the clock rise, at a clock ceiling it does not: the simulator keeps both truths. */
    @Test
    void aLighterLoadTellsAPowerLimitFromAClockCeiling() {
        LimiterAnswer limited = underTwoLoads(InventedDevices.shelfDesktop());
        assertEquals(Limiter.POWER, limited.conditions().get(0).limiter(), () -> limited.conditions().get(0).toString());
        assertEquals(Prediction.Result.SUPPORTED, ofTheClock(limited, Hypothesis.POWER));
        assertEquals(Prediction.Result.RULED_OUT, ofTheClock(limited, Hypothesis.CLOCK));
        LimiterAnswer atTheTop = underTwoLoads(InventedDevices.steadyBox());
        assertEquals(Limiter.CLOCK, atTheTop.conditions().get(0).limiter());
        assertEquals(Prediction.Result.SUPPORTED, ofTheClock(atTheTop, Hypothesis.CLOCK));
        assertEquals(Prediction.Result.RULED_OUT, ofTheClock(atTheTop, Hypothesis.POWER));
    }

    /** Two works have two scores: that theirs differ by far more than the clock does not say that the rate leaves the clock alone, or follows it. */
    @Test
    void scoresOfTwoLoadsAreNotHeldAgainstOneAnother() {
        assertTrue(underTwoLoads(InventedDevices.shelfDesktop()).predictions().stream().filter(one -> one.change().startsWith("lighter"))
                .noneMatch(one -> one.quantity().equals("performance")));
    }

    @Test
    void aChangeThatWasNotTriedIsUntestedWithWhatItWouldShow() {
        LimiterAnswer answer = explain(InventedDevices.trailLaptop(), KnownLimits.NONE, pair(ROOM, FROST));
        List<Prediction> open = answer.predictions().stream().filter(one -> one.levels().isEmpty()).toList();
        assertEquals(List.of("better cooling", "lighter load", "other power source"), open.stream().map(Prediction::change).distinct().toList());
        assertTrue(open.stream().allMatch(one -> one.result() == Prediction.Result.UNTESTED && one.observed().equals("not tried")));
        assertTrue(open.stream().anyMatch(one -> one.change().equals("lighter load") && one.hypothesis() == Hypothesis.CLOCK && one.quantity().equals("clock")
                && one.predicted().equals("stays the same")));
    }
}
