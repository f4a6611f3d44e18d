package coldproof.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.plan.Position;
import coldproof.quantity.Refused;
import coldproof.reason.checklist.Ask;
import coldproof.study.SessionClosed;
import coldproof.study.StudyState;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BiConsumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LogJobTest {
    @TempDir
    Path folder;

    private static String usualAnswer(LogJob log) {
        int trial = log.question().progress().trial();
        boolean room = log.question().progress().condition().startsWith("room");
        return switch (log.question().ask()) {
            case AIR -> room ? "21" : "-5 °C";
            case DEVICE -> "20";
            case WIND -> "10 km/h";
            case HUMIDITY -> "60 %";
            case PRECIPITATION -> "none";
            case SAFETY -> "Mira";
            case SOAK -> "20 min";
            case BATTERY -> Integer.toString(95 - trial);
            case SCORE -> "6" + trial % 3 + ",5";
            default -> "";
        };
    }

    /** Walks through to the end, giving the usual answer to every question. */
    private static List<Ask> walk(TestBench bench, BiConsumer<LogJob, Ask> before) {
        List<Ask> asked = new ArrayList<>();
        try (LogJob log = bench.log()) {
            while (log.question().ask() != Ask.FINISHED) {
                assertTrue(asked.size() < 500, () -> "no end: " + log.question());
                Ask ask = log.question().ask();
                asked.add(ask);
                before.accept(log, ask);
                log.answer(usualAnswer(log));
            }
        }
        return asked;
    }

    private StudyState state() {
        return StudyView.read(folder).state();
    }

    @Test
    void aSessionAsksForTheAirThenSoakThenEachTrialAndItsEnd() {
        List<Ask> asked = new ArrayList<>(walk(new TestBench(folder, TestBench.WINTER_PLAN), (log, ask) -> {}));
        assertTrue(asked.removeIf(ask -> ask == Ask.SAFETY), "the cold asks for care");
        List<Ask> trials = List.of(Ask.OPEN_SESSION, Ask.SOAK, Ask.BATTERY, Ask.POWER, Ask.SCORE, Ask.BATTERY, Ask.POWER, Ask.SCORE, Ask.CLOSE_SESSION);
        List<Ask> all = new ArrayList<>();
        boolean wasOut = false;
        for (Position first : StudyView.read(folder).sheet().positions().stream().filter(position -> position.orderInSession() == 1).toList()) {
            boolean out = first.levels().get("ambient").equals("chilled");
            all.addAll(out ? List.of(Ask.AIR, Ask.HUMIDITY, Ask.WIND, Ask.PRECIPITATION) : wasOut ? List.of(Ask.AIR, Ask.HUMIDITY, Ask.DEVICE) : List.of(Ask.AIR));
            all.addAll(trials);
            wasOut = out;
        }
        assertEquals(all, asked);
        assertEquals(8, state().trials().size());
        assertTrue(state().sessions().stream().allMatch(session -> session.ending().orElseThrow() == SessionClosed.Ending.DONE));
        assertEquals(61.5, state().trialAt(1).orElseThrow().score());
    }

    @Test
    void theWholeStudyAsPlannedLeavesNoOddityAndNoDeviation() {
        walk(new TestBench(folder, TestBench.WINTER_PLAN), (log, ask) -> {});
        assertEquals(List.of(), state().oddities());
        assertEquals(List.of(), state().deviations());
        assertTrue(state().cautionsAcknowledged().stream().allMatch(one -> one.event().by().equals("Mira")));
    }

    @Test
    void snowBlocksTheSessionUntilItIsMeasuredToBeOver() {
        TestBench bench = new TestBench(folder, TestBench.WINTER_PLAN.replace("seed: 7", "seed: " + seedThatStartsOutdoors()));
        try (LogJob log = bench.log()) {
            for (String answer : List.of("-6", "80", "2", "snow", "")) {
                log.answer(answer);
            }
            assertEquals(Ask.SAFETY, log.question().ask());
            assertThrows(Refused.class, () -> log.answer("Mira"), "no name opens the gate while it snows");
            assertTrue(log.view().state().sessions().isEmpty());
            log.answer("precipitation none");
            while (log.question().ask() != Ask.SOAK) {
                log.answer(log.question().ask() == Ask.SAFETY ? "Mira" : "");
            }
            assertEquals(Ask.SOAK, log.question().ask());
            assertTrue(log.stayLimit().isEmpty() || log.stayLimit().get().seconds() > 0);
        }
    }

    @Test
    void leavingAndComingBackAfterEveryAnswerGoesOnAtTheSameStep(@TempDir Path other) {
        walk(new TestBench(folder, TestBench.WINTER_PLAN), (log, ask) -> {});
        TestBench broken = new TestBench(other, TestBench.WINTER_PLAN);
        boolean done = false;
        while (!done) {
            try (LogJob log = broken.log()) {
                long before = log.view().state().lastSequence();
                while (!done && log.view().state().lastSequence() == before) {
                    Ask ask = log.question().ask();
                    done = ask == Ask.FINISHED;
                    log.answer(usualAnswer(log));
                }
            }
        }
        StudyState again = StudyView.read(other).state();
        assertEquals(state().lastSequence(), again.lastSequence());
        assertEquals(state().trials().stream().map(trial -> trial.recorded().levels() + " " + trial.score()).toList(),
                again.trials().stream().map(trial -> trial.recorded().levels() + " " + trial.score()).toList());
        assertEquals(List.of(), again.oddities());
    }

    @Test
    void aScoreFarFromTheOthersIsAskedForAgainAndRecordedWhenConfirmed() {
        TestBench bench = new TestBench(folder, TestBench.FAN_PLAN);
        try (LogJob log = bench.log()) {
            log.answer("");
            log.answer("92.4");
            log.answer("924");
            assertEquals(Ask.CONFIRM_SCORE, log.question().ask());
            assertEquals(1, log.view().state().trials().size());
            log.answer("");
            assertEquals(1, log.view().state().trials().size(), "Enter alone confirms nothing");
            log.answer("92.1");
            assertEquals(92.1, log.view().state().trialAt(2).orElseThrow().score());
            log.answer("924");
            log.answer("y");
            assertEquals(924, log.view().state().trialAt(3).orElseThrow().score());
        }
    }

    @Test
    void undoTakesBackTheLastTrialAndTheSamePlaceIsAskedAgain() {
        TestBench bench = new TestBench(folder, TestBench.FAN_PLAN);
        try (LogJob log = bench.log()) {
            log.answer("");
            log.answer("92.4 s");
            log.answer("1 min 31 s");
            assertEquals(91, log.view().state().trialAt(2).orElseThrow().score());
            log.answer("u wrong line");
            assertEquals(2, log.question().progress().trial());
            log.answer("skip power cut");
            assertEquals("power cut", log.view().state().skipped().get(2));
            log.answer("undo");
            assertTrue(log.view().state().skipped().isEmpty());
            log.answer("U");
            assertEquals(1, log.question().progress().trial());
            assertThrows(Refused.class, () -> log.answer("u"));
            assertEquals(1, log.question().progress().trial());
        }
    }

    @Test
    void loopsGiveOneScoreAndTheirSteadiness() {
        TestBench bench = new TestBench(folder, TestBench.FAN_PLAN);
        try (LogJob log = bench.log()) {
            log.answer("");
            LogReply reply = log.answer("90 100; 95,0");
            assertEquals(95, log.view().state().trialAt(1).orElseThrow().score(), 1e-12);
            assertEquals(List.of(90.0, 100.0, 95.0), log.view().state().trialAt(1).orElseThrow().recorded().loops());
            assertTrue(reply.said().get(1).contains("steadiness 0.900"), reply.said().toString());
            // A time that grows from 90 to 95 s over three loops is a loss of speed: exp(-ln(95/90)) - 1 = -5.26 %.
            assertTrue(reply.said().get(1).contains("drift -5.26 %"), reply.said().toString());
        }
    }

    @Test
    void aBatteryBelowThePlansLimitBlocksTheTrial() {
        TestBench bench = new TestBench(folder, TestBench.WINTER_PLAN);
        try (LogJob log = bench.log()) {
            while (log.question().ask() != Ask.BATTERY) {
                log.answer(usualAnswer(log));
            }
            assertThrows(Refused.class, () -> log.answer("14 %"));
            assertEquals(Ask.BATTERY, log.question().ask());
            log.answer("35");
            LogReply reply = log.answer("wall");
            assertEquals(3, reply.said().size(), reply.said().toString());
            assertTrue(log.view().deviations().toString().contains("battery at 35 %, planned at least 40 %"));
            assertTrue(log.view().deviations().toString().contains("on wall power, planned battery"));
        }
    }

    @Test
    void aBreakIsNotTimeOutdoorsAndANewSoakIsOffered() {
        TestBench bench = new TestBench(folder, TestBench.WINTER_PLAN.replace("seed: 7", "seed: " + seedThatStartsOutdoors()));
        try (LogJob log = bench.log()) {
            while (log.question().ask() != Ask.SOAK) {
                log.answer(usualAnswer(log));
            }
            bench.pass(Duration.ofMinutes(21));
            log.answer("");
            assertEquals(21 * 60, log.meters().outdoorsSeconds(), 1);
            bench.pass(Duration.ofMinutes(2));
            assertTrue(log.answer("p cold hands").leaves());
        }
        bench.pass(Duration.ofDays(6));
        try (LogJob log = bench.log()) {
            assertEquals(Ask.RESUME, log.question().ask());
            assertEquals(23 * 60, log.meters().outdoorsSeconds(), 1);
            log.answer("soak");
            assertEquals(Ask.SOAK, log.question().ask());
            bench.pass(Duration.ofMinutes(10));
            log.answer("");
            assertEquals(33 * 60, log.meters().outdoorsSeconds(), 1);
            assertTrue(log.view().deviations().toString().contains("soaked 10 min, planned 20 min"), log.view().deviations().toString());
        }
    }

    @Test
    void aSessionLeftOpenWithoutAWordIsResumedNotCounted() {
        TestBench bench = new TestBench(folder, TestBench.FAN_PLAN);
        try (LogJob log = bench.log()) {
            log.answer("");
            log.answer("92");
        }
        bench.pass(Duration.ofHours(9));
        try (LogJob log = bench.log()) {
            assertEquals(Ask.RESUME, log.question().ask());
            log.answer("");
            assertEquals(2, log.question().progress().trial());
            assertEquals(0, log.view().state().sessions().get(0).elapsed().seconds(), 1e-9);
        }
    }

    @Test
    void anAbortedSessionLeavesItsOtherTrialsAloneAndTheNextSessionComes() {
        TestBench bench = new TestBench(folder, TestBench.WINTER_PLAN);
        try (LogJob log = bench.log()) {
            while (log.question().ask() != Ask.SCORE) {
                log.answer(usualAnswer(log));
            }
            log.answer("61");
            log.answer("a");
            assertEquals(Ask.ABORT_REASON, log.question().ask());
            log.answer("snow began");
            assertEquals(2, log.question().progress().session());
            assertEquals(3, log.question().progress().trial());
            assertFalse(log.view().deviations().isEmpty());
        }
    }

    @Test
    void everyWrongAnswerIsRefusedAndChangesNothing() {
        TestBench bench = new TestBench(folder, TestBench.WINTER_PLAN);
        walk(bench, (log, ask) -> {
            if (ask == Ask.SCORE || ask == Ask.SOAK || ask == Ask.OPEN_SESSION || ask == Ask.BATTERY || ask == Ask.CLOSE_SESSION) {
                long before = log.view().state().lastSequence();
                for (String wrong : List.of("-3", "0", "twelve", "1,500.2", "NaN", "\u001b[2J")) {
                    assertThrows(Refused.class, () -> log.answer(ask == Ask.BATTERY && wrong.equals("0") ? "101" : wrong), ask + " took " + wrong);
                }
                assertEquals(before, log.view().state().lastSequence());
                assertEquals(ask, log.question().ask());
            }
        });
    }

    private static int seedThatStartsOutdoors() {
        for (int seed = 1; seed < 50; seed++) {
            coldproof.plan.Plan plan = coldproof.files.plan.PlanReader.read("plan", TestBench.WINTER_PLAN.replace("seed: 7", "seed: " + seed));
            if (StudyView.sheet(plan).positions().get(0).levels().get("ambient").equals("chilled")) {
                return seed;
            }
        }
        throw new AssertionError("no seed starts outdoors");
    }
}
