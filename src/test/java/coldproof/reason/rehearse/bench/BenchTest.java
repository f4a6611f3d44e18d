package coldproof.reason.rehearse.bench;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.quantity.LogRatio;
import coldproof.reason.rehearse.bench.BenchTrace.Channel;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class BenchTest {
    private static final BenchCondition ROOM = BenchCondition.room(21);
    private static final BenchCondition FROST = BenchCondition.outdoors(-9);

    private static BenchTruth truth(BenchParameters device, BenchCondition condition) {
        return Bench.of(device).truth(condition);
    }

    @Test
    void everyReadyDeviceIsHeldByWhatItSays() {
        assertEquals(Optional.of(HeldBy.HEAT), truth(InventedDevices.trailLaptop(), ROOM).limiter());
        assertEquals(Optional.of(HeldBy.POWER), truth(InventedDevices.trailLaptop(), FROST).limiter());
        assertEquals(Optional.of(HeldBy.HEAT), truth(InventedDevices.workshopLaptop(), ROOM).limiter());
        assertEquals(Optional.of(HeldBy.POWER), truth(InventedDevices.workshopLaptop(), ROOM.with(Fan.Setting.MAXIMUM)).limiter());
        assertEquals(Optional.of(HeldBy.POWER), truth(InventedDevices.shelfDesktop(), ROOM).limiter());
        assertEquals(Optional.of(HeldBy.POWER), truth(InventedDevices.shelfDesktop(), FROST).limiter());
        assertEquals(Optional.of(HeldBy.CLOCK), truth(InventedDevices.steadyBox(), ROOM).limiter());
        assertEquals(Optional.of(HeldBy.CLOCK), truth(InventedDevices.steadyBox(), FROST).limiter());
        assertEquals(Optional.of(HeldBy.WORKLOAD), truth(InventedDevices.waitingStation(), ROOM).limiter());
        assertEquals(Optional.of(HeldBy.WORKLOAD), truth(InventedDevices.waitingStation(), FROST).limiter());
        assertEquals(Optional.of(HeldBy.SUPPLY), truth(InventedDevices.ferryTablet(), ROOM).limiter());
        assertEquals(Optional.of(HeldBy.SUPPLY), truth(InventedDevices.ferryTablet(), FROST.with(Supply.Source.BATTERY)).limiter());
    }

    /** Signs of the usual discriminating table (common practice): what colder air does to rate, die, power and clock under each limiter. */
    @Test
    void colderAirActsOnEachLimiterAsTheTradeExpects() {
        BenchTruth heat = truth(InventedDevices.workshopLaptop(), BenchCondition.room(27));
        BenchTruth heatColder = truth(InventedDevices.workshopLaptop(), ROOM);
        assertTrue(heatColder.noiseFreeRate() > 1.01 * heat.noiseFreeRate());
        assertEquals(heat.sustainedDieCelsius(), heatColder.sustainedDieCelsius(), 0.3);
        assertTrue(heatColder.sustainedWatts() > 1.03 * heat.sustainedWatts());
        BenchTruth power = truth(InventedDevices.shelfDesktop(), ROOM);
        BenchTruth powerColder = truth(InventedDevices.shelfDesktop(), FROST);
        double leakageGain = powerColder.noiseFreeRate() / power.noiseFreeRate() - 1;
        assertTrue(leakageGain > 0.01 && leakageGain < 0.05, "gain by lower leakage " + leakageGain); // 1 to 5 % for 27 K (from memory)
        assertEquals(power.sustainedWatts(), powerColder.sustainedWatts(), 0.01);
        assertTrue(powerColder.sustainedDieCelsius() < power.sustainedDieCelsius() - 15);
        assertTrue(powerColder.sustainedFanRpm() < power.sustainedFanRpm());
        BenchTruth clock = truth(InventedDevices.steadyBox(), ROOM);
        BenchTruth clockColder = truth(InventedDevices.steadyBox(), FROST);
        assertEquals(clock.noiseFreeRate(), clockColder.noiseFreeRate(), 1e-12);
        assertTrue(clockColder.sustainedWatts() < clock.sustainedWatts() && clockColder.sustainedWatts() > 0.9 * clock.sustainedWatts());
        BenchTruth work = truth(InventedDevices.waitingStation(), ROOM);
        assertEquals(work.noiseFreeRate(), truth(InventedDevices.waitingStation(), FROST).noiseFreeRate(), 1e-12);
        BenchCondition unplugged = ROOM.with(Supply.Source.BATTERY);
        assertTrue(truth(InventedDevices.ferryTablet(), FROST.with(Supply.Source.BATTERY)).noiseFreeRate()
                < 0.95 * truth(InventedDevices.ferryTablet(), unplugged).noiseFreeRate());
    }

    @Test
    void aPinnedFanHelpsOnlyWhereHeatHolds() {
        BenchCondition pinned = ROOM.with(Fan.Setting.MAXIMUM);
        assertTrue(truth(InventedDevices.workshopLaptop(), pinned).noiseFreeRate()
                > 1.015 * truth(InventedDevices.workshopLaptop(), ROOM).noiseFreeRate());
        assertEquals(truth(InventedDevices.steadyBox(), ROOM).noiseFreeRate(),
                truth(InventedDevices.steadyBox(), pinned).noiseFreeRate(), 1e-12);
        assertTrue(truth(InventedDevices.ferryTablet(), pinned).noiseFreeRate()
                < truth(InventedDevices.ferryTablet(), ROOM).noiseFreeRate()); // the fan eats from the same adapter
    }

    @Test
    void betterPasteLowersTheDie() {
        assertTrue(truth(InventedDevices.shelfDesktop(), ROOM.withPaste(0.5)).sustainedDieCelsius()
                < truth(InventedDevices.shelfDesktop(), ROOM).sustainedDieCelsius() - 5);
        BenchSession session = Bench.of(InventedDevices.shelfDesktop()).study(new SplittableRandom(1)).session(ROOM);
        BenchCondition repasted = ROOM.withPaste(0.5);
        assertThrows(IllegalArgumentException.class, () -> session.run(repasted));
    }

    @Test
    void theSameSeedGivesTheSameBytesAndAnotherDoesNot() {
        Bench bench = Bench.of(InventedDevices.trailLaptop());
        BenchTrial first = bench.study(new SplittableRandom(7)).session(FROST).run(FROST);
        BenchTrial again = bench.study(new SplittableRandom(7)).session(FROST).run(FROST);
        BenchTrial other = bench.study(new SplittableRandom(8)).session(FROST).run(FROST);
        assertEquals(first.score(), again.score(), 0);
        for (Channel channel : Channel.values()) {
            assertArrayEquals(first.trace().values(channel), again.trace().values(channel), 0);
        }
        assertNotEquals(first.score(), other.score());
    }

    @Test
    void otherSensorsLeaveTheScoresAsTheyWere() {
        BenchParameters device = InventedDevices.trailLaptop();
        double[] scores = new double[2];
        int i = 0;
        for (BenchParameters each : List.of(device, device.with(Sensors.PERFECT))) {
            BenchSession session = Bench.of(each).study(new SplittableRandom(3)).session(ROOM);
            session.run(ROOM);
            session.rest(ROOM, 60);
            scores[i++] = session.run(ROOM).score();
        }
        assertEquals(scores[0], scores[1], 0);
    }

    @Test
    void theTraceTellsTheTruthWhenItsSensorsDo() {
        BenchParameters device = InventedDevices.trailLaptop().withoutChance();
        BenchTrial trial = Bench.of(device).study(new SplittableRandom(1)).session(ROOM).run(ROOM);
        Workload workload = device.workload();
        BenchTrace trace = trial.trace();
        assertEquals(workload.leadSeconds() + workload.workSeconds() + workload.tailSeconds(), trace.size(), 0);
        int from = (int) (workload.leadSeconds() + workload.workSeconds() / 2);
        int to = (int) (workload.leadSeconds() + workload.workSeconds());
        assertEquals(trial.truth().sustainedWatts(), mean(trace.values(Channel.PACKAGE_WATTS), from, to), 1e-9);
        assertEquals(trial.truth().sustainedMegahertz(), mean(trace.values(Channel.MEGAHERTZ), from, to), 1e-6);
        assertEquals(trial.truth().sustainedDieCelsius(), mean(trace.values(Channel.DIE_CELSIUS), from, to), 0.1); // momentary against mean
        assertEquals(21, trace.values(Channel.AIR_CELSIUS)[40], 1e-12);
        assertTrue(trace.values(Channel.UTILISATION_PERCENT)[5] < 10);
        assertEquals(100, trace.values(Channel.UTILISATION_PERCENT)[12], 1e-9);
        assertEquals(trial.truth().noiseFreeRate(), trial.score(), 1e-9);
        assertEquals(trial.score(), mean(trial.loopRates(), 0, workload.loops()), 1e-9);
    }

    @Test
    void dieSensorsClipLoseAndFreezeAsToldTo() {
        Sensors faulty = new Sensors(1, 0.01, 1, 0.3, 1, 0, 0, 10, 0.1, 5, 0.1, 1);
        BenchParameters device = InventedDevices.trailLaptop().with(faulty);
        BenchSession session = Bench.of(device).study(new SplittableRandom(5)).session(FROST);
        BenchTrace trace = session.run(FROST).trace();
        double[] die = trace.values(Channel.DIE_CELSIUS);
        int lost = 0;
        int longest = 0;
        int same = 0;
        double before = Double.NaN;
        for (double reading : die) {
            if (Double.isNaN(reading)) {
                lost++;
                continue;
            }
            assertEquals(Math.rint(reading), reading, 0);
            assertTrue(reading >= 0);
            same = reading == before ? same + 1 : 1;
            longest = Math.max(longest, same);
            before = reading;
        }
        assertTrue(lost > 8 && lost < 90, lost + " lost of " + die.length); // 10 % of 255, some repeated by the freeze
        assertTrue(longest >= 20, "longest freeze " + longest);
        assertEquals(0, die[0], 0); // an idle die in frost lies below what the sensor can show
        double[] seconds = trace.values(Channel.SECONDS);
        for (int i = 1; i < seconds.length; i++) {
            assertTrue(seconds[i] > seconds[i - 1]);
        }
    }

    /** 4000 sessions of 2: sd of a cv estimate from n draws is cv / sqrt(2 n), and four of these are allowed. */
    @Test
    void scoresScatterAsMuchAsTold() {
        BenchParameters device = InventedDevices.steadyBox().withoutChance().with(ScoreSpread.of(1.2, 0.8));
        QuickScores.Study study = Bench.of(device).quickScores(List.of(ROOM)).study(new SplittableRandom(11));
        int sessions = 4000;
        double within = 0;
        double sum = 0;
        double squares = 0;
        for (int i = 0; i < sessions; i++) {
            study.beginSession(false);
            double first = study.nextLogScore(0, 0);
            double second = study.nextLogScore(0, 0);
            within += (first - second) * (first - second) / 2;
            double mean = (first + second) / 2;
            sum += mean;
            squares += mean * mean;
        }
        double runVariance = within / sessions;
        double meanVariance = (squares - sum * sum / sessions) / (sessions - 1);
        double run = LogRatio.logSdOfCv(1.2);
        double session = LogRatio.logSdOfCv(0.8);
        double allowed = 4 / Math.sqrt(2.0 * sessions);
        assertEquals(1, Math.sqrt(runVariance) / run, allowed);
        assertEquals(1, Math.sqrt(meanVariance / (session * session + run * run / 2)), allowed);
    }

    /** Quick and full draw the same scatter: under one seed they differ by heat carried over and by the air only. */
    @Test
    void quickScoresFollowTheFullSimulation() {
        BenchParameters device = InventedDevices.trailLaptop();
        Bench bench = Bench.of(device);
        QuickScores quick = bench.quickScores(List.of(ROOM, FROST));
        assertEquals(Math.log(bench.truth(FROST).noiseFreeRate()), quick.logScore(1), 1e-12);
        assertTrue(quick.logPerKelvin(0) < 0);
        List<Double> differences = new ArrayList<>();
        for (int seed = 0; seed < 6; seed++) {
            QuickScores.Study fast = quick.study(new SplittableRandom(seed));
            BenchStudy full = bench.study(new SplittableRandom(seed));
            for (int s = 0; s < 2; s++) {
                BenchCondition condition = s == 0 ? ROOM : FROST;
                fast.beginSession(s == 1);
                BenchSession session = full.session(condition);
                for (int t = 0; t < 2; t++) {
                    session.rest(condition, 120);
                    differences.add(Math.abs(fast.nextLogScore(s, 120) - Math.log(session.run(condition).score())));
                }
            }
        }
        for (double difference : differences) {
            assertTrue(difference < 0.01, "log scores differ by " + difference); // air of one path against another of the same spread
        }
    }

    @Test
    void driftAndBackgroundTasksMoveTheScoreAsTold() {
        ScoreSpread drifting = new ScoreSpread(0, 0, -1, 0, 0, 0, 0, 0, 0);
        BenchParameters device = InventedDevices.steadyBox().withoutChance();
        QuickScores.Study study = Bench.of(device.with(drifting)).quickScores(List.of(ROOM)).study(new SplittableRandom(1));
        study.beginSession(false);
        double first = study.nextLogScore(0, 0);
        study.nextLogScore(0, 0);
        assertEquals(first + 2 * Math.log(0.99), study.nextLogScore(0, 0), 1e-12);
        ScoreSpread disturbed = new ScoreSpread(0, 0, 0, 0, 0, 0, 0, 0, 1);
        BenchTrial trial = Bench.of(device.with(disturbed)).study(new SplittableRandom(2)).session(ROOM).run(ROOM);
        double left = trial.score() / trial.truth().noiseFreeRate();
        double most = 0.4 * 90 / 240;
        assertTrue(trial.disturbed() && left < 1 - 0.15 * 25 / 240 + 1e-3 && left > 1 - most - 1e-3, "left " + left);
    }

    @Test
    void parametersOutOfRangeAreRefusedByName() {
        IllegalArgumentException refusal = assertThrows(IllegalArgumentException.class, () -> HeatNetwork.ofTwoNodes(0.1, 40, 0.5, 1, 0));
        assertTrue(refusal.getMessage().contains("time constant of the die"), refusal.getMessage());
        assertThrows(IllegalArgumentException.class, () -> new ControlLimits(Double.NaN, ControlLimits.HeatControl.TRIP, 30, 40, 28, 4000));
        assertThrows(IllegalArgumentException.class, () -> new ControlLimits(95, ControlLimits.HeatControl.TRIP, 40, 30, 28, 4000));
        Bench desktop = Bench.of(InventedDevices.shelfDesktop());
        BenchCondition unplugged = ROOM.with(Supply.Source.BATTERY);
        assertThrows(IllegalArgumentException.class, () -> desktop.truth(unplugged));
    }

    private static double mean(double[] values, int from, int to) {
        double sum = 0;
        for (int i = from; i < to; i++) {
            sum += values[i];
        }
        return sum / (to - from);
    }
}
