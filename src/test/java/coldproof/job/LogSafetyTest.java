package coldproof.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.quantity.Refused;
import coldproof.reason.checklist.Ask;
import coldproof.study.StudyState;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The checklist at the safety gate, in a session whose air was read as so many degrees. */
class LogSafetyTest {
    @TempDir
    Path folder;

    private LogJob log() {
        return new TestBench(folder, TestBench.WINTER_PLAN).log();
    }

    private static void until(LogJob log, Ask ask, String air) {
        while (log.question().ask() != ask) {
            log.answer(switch (log.question().ask()) {
                case AIR -> air;
                case SOAK -> "20 min";
                case SAFETY -> "Ada";
                default -> "";
            });
        }
    }

    private StudyState state() {
        return StudyView.read(folder).state();
    }

    private static boolean says(LogJob log, String words) {
        return log.question().safety().stream().anyMatch(line -> line.contains(words));
    }

    @Test
    void aSessionIsNotOpenedWhileAStopHolds() {
        try (LogJob log = log()) {
            until(log, Ask.OPEN_SESSION, "-25");
            log.answer("");
            assertEquals(Ask.SAFETY, log.question().ask());
            assertTrue(says(log, "STOP: Below the usual storage range"), log.question().safety()::toString);
            assertThrows(Refused.class, () -> log.answer("Ada"));
            assertThrows(Refused.class, () -> log.answer(""));
            assertTrue(state().sessions().isEmpty());
            log.answer("air -6 °C");
            assertEquals(Ask.OPEN_SESSION, log.question().ask());
            log.answer("");
            assertEquals(-6, state().startConditions().get(0).event().readings().get("air").amount().getAsDouble());
            assertEquals(Ask.SAFETY, log.question().ask(), "cares want a name once it is open");
        }
    }

    @Test
    void aStopSetAsideBeforeTheSessionIsADeviationOfIt() {
        try (LogJob log = log()) {
            until(log, Ask.OPEN_SESSION, "-25");
            log.answer("");
            assertThrows(Refused.class, () -> log.answer("aside below-storage-range"), "a reason is wanted");
            assertThrows(Refused.class, () -> log.answer("aside precipitation it does not snow"), "it does not hold");
            log.answer("aside below-storage-range the maker states -30 °C");
            assertEquals(Ask.SAFETY, log.question().ask(), "the cells are below -20 °C as well");
            log.answer("aside discharge-deep-cold the maker states -30 °C");
            log.answer("");
            assertTrue(log.view().deviations().contains("the safety rule below-storage-range was set aside: the maker states -30 °C"));
            until(log, Ask.SCORE, "-25");
        }
    }

    @Test
    void careWantsANameWhichTheJournalKeeps() {
        try (LogJob log = log()) {
            until(log, Ask.SAFETY, "-6");
            assertTrue(says(log, "care: Colder than nearly any maker allows"));
            assertThrows(Refused.class, () -> log.answer(""));
            assertEquals(List.of("Acknowledged by Ada Brook. Recorded."), log.answer("Ada Brook").said());
            assertTrue(state().cautionsAcknowledged().stream().allMatch(one -> one.event().by().equals("Ada Brook")));
            assertEquals(Ask.SOAK, log.question().ask());
        }
    }

    @Test
    void aReadingAtTheGateIsJudgedAtOnce() {
        try (LogJob log = log()) {
            until(log, Ask.SAFETY, "-6");
            log.answer("charging yes");
            assertTrue(says(log, "STOP: NO CHARGING below 0 °C"), log.question().safety()::toString);
            assertThrows(Refused.class, () -> log.answer("aside charge-frozen-cell it is only a little"));
            assertThrows(Refused.class, () -> log.answer("cell temperature 999 °C"));
            log.answer("charging no");
            log.answer("Ada");
            assertEquals(Ask.SOAK, log.question().ask());
        }
    }

    @Test
    void whatIsNotReadIsNotAsked() {
        try (LogJob log = log()) {
            until(log, Ask.SCORE, "");
            assertTrue(state().cautionsAcknowledged().isEmpty());
        }
    }

    @Test
    void theStopStaysWhenTheProgramIsLeftAndOpenedAgain() {
        TestBench bench = new TestBench(folder, TestBench.WINTER_PLAN);
        try (LogJob log = bench.log()) {
            until(log, Ask.SAFETY, "-6");
            log.answer("charging yes");
        }
        try (LogJob log = bench.log()) {
            assertEquals(Ask.SAFETY, log.question().ask());
            assertTrue(says(log, "STOP: NO CHARGING"), log.question().safety()::toString);
        }
    }

    @Test
    void aStopAtTheOpeningStaysUntilItIsMeasuredToBeOver() {
        TestBench bench = new TestBench(folder, TestBench.WINTER_PLAN);
        try (LogJob log = bench.log()) {
            until(log, Ask.OPEN_SESSION, "-25");
            log.answer("");
            assertTrue(says(log, "STOP: Below the usual storage range"), log.question().safety()::toString);
        }
        try (LogJob log = bench.log()) {
            until(log, Ask.OPEN_SESSION, "");
            log.answer("");
            assertTrue(says(log, "STOP: Below the usual storage range"), "not reading the air again must not lift it");
            assertTrue(state().sessions().isEmpty());
        }
        try (LogJob log = bench.log()) {
            until(log, Ask.OPEN_SESSION, "-6");
            log.answer("");
            assertEquals(1, state().sessions().size());
            assertTrue(log.question().safety().stream().noneMatch(line -> line.startsWith("STOP")), log.question().safety()::toString);
        }
        assertEquals(1, state().cautionsShown().stream().filter(shown -> shown.event().rule().equals("below-storage-range")).count());
    }

    @Test
    void skippingATrialDoesNotLiftAStopAtTheOpening() {
        TestBench bench = new TestBench(folder, TestBench.WINTER_PLAN);
        try (LogJob log = bench.log()) {
            until(log, Ask.OPEN_SESSION, "-25");
            log.answer("");
            log.answer("skip too cold");
            assertEquals(1, state().sessions().size(), "a skip opens the session it belongs to");
            assertEquals(Ask.SAFETY, log.question().ask());
            assertTrue(says(log, "STOP: Below the usual storage range"), log.question().safety()::toString);
            log.answer("air -6 °C");
            assertTrue(log.question().safety().stream().noneMatch(line -> line.startsWith("STOP")), log.question().safety()::toString);
        }
    }

    /** -6 to 11.6 °C in a room of 21 °C and 45 % at the slow end of a laptop is 93 min, as reckoned in {@link SafetyGateTest}. */
    @Test
    void closingASessionOutdoorsTellsHowToComeIn() {
        int outdoors = 0;
        int indoors = 0;
        boolean told = false;
        try (LogJob log = log()) {
            while (log.question().ask() != Ask.FINISHED) {
                boolean out = log.meters().outdoorsNow();
                boolean cold = log.question().step().position().filter(next -> next.levels().containsValue("chilled")).isPresent();
                Ask ask = log.question().ask();
                List<String> said = log.answer(switch (ask) {
                    case AIR -> cold ? "-6" : "21";
                    case DEVICE -> "20";
                    case SOAK -> "20 min";
                    case SCORE -> "61";
                    case CONFIRM_SCORE -> "y";
                    case SAFETY -> out && !told ? "room humidity 45 %" : "Ada";
                    default -> "";
                }).said();
                told = out && (told || ask == Ask.SAFETY);
                if (ask == Ask.CLOSE_SESSION && out) {
                    outdoors++;
                    assertEquals(4, said.size(), said::toString);
                    assertTrue(said.get(1).startsWith("Coming in: Off (not asleep), unplugged, closed. Bag it in the test air"), said::toString);
                    assertTrue(said.get(2).startsWith("Wait, sealed: 93 min ("), said::toString);
                    assertTrue(said.get(3).contains("at 11.6 °C or more") && said.get(3).contains("Charge only with cells above 0 °C"), said::toString);
                } else if (ask == Ask.CLOSE_SESSION) {
                    indoors++;
                    assertEquals(1, said.size(), said::toString);
                }
            }
        }
        assertEquals(2, outdoors);
        assertEquals(2, indoors);
    }

    @Test
    void withoutTheRoomsHumidityComingInTakesAnHourAtLeast() {
        try (LogJob log = log()) {
            until(log, Ask.SCORE, "-6");
            while (!log.meters().outdoorsNow()) {
                log.answer("skip only the cold one matters here");
                until(log, Ask.SCORE, "-6");
            }
            List<String> said = log.answer("abort snow began").said();
            assertTrue(said.contains("Wait, sealed, 60 min at the least; reckon with room and its humidity."), said::toString);
        }
    }
}
