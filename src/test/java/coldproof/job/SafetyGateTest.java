package coldproof.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.plan.Position;
import coldproof.quantity.Refused;
import coldproof.reason.safety.Phase;
import coldproof.reason.safety.Reading;
import coldproof.study.CautionAcknowledged;
import coldproof.study.CautionShown;
import coldproof.study.Source;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SafetyGateTest {
    /** Two sessions in the winter yard and two in the room, in an order the seed gives. */
    private static final String PLAN = """
            coldproof: 1
            title: Does winter air lift the speed of the trail laptop?
            device: trail laptop
            metric: {name: rate, unit: frames/s, better: higher}
            compare: {factor: ambient, baseline: room, against: yard}
            matters: 3 %
            factors:
              ambient: {change: per session, levels: {room: 21 °C, yard: -6 °C}}
            layout: {sessions: {room: 2, yard: 2}, trials per condition: 2, order: counterbalanced}
            budget: {trial: 4 min, soak: 20 min, outdoors: [yard]}
            seed: 7
            """;

    @TempDir
    Path folder;
    private final TestClock clock = new TestClock("2026-01-14T10:00:00Z");
    private final Machine machine = clock.machine();

    @BeforeEach
    void plan() throws IOException {
        freeze(PLAN);
    }

    private void freeze(String plan) throws IOException {
        Files.writeString(folder.resolve("plan.yaml"), plan);
        PlanJob.freeze(folder, machine, Optional.of("test"));
    }

    private static Taken taken(Reading reading, String text) {
        return new Taken(reading, "--" + reading.word(), text);
    }

    private static SafetyGate.Pass pass(Optional<String> by, Map<String, String> setAside, Taken... taken) {
        return new SafetyGate.Pass(List.of(taken), by, setAside);
    }

    private static SafetyGate.Pass measured(Taken... taken) {
        return pass(Optional.empty(), Map.of(), taken);
    }

    private static SafetyGate.Pass signed(Taken... taken) {
        return pass(Optional.of("Ada"), Map.of(), taken);
    }

    private BenchStudy open() {
        return BenchStudy.open(folder, machine);
    }

    private Position next(BenchStudy study) {
        return study.view().next().orElseThrow();
    }

    /** Lets every trial up to the next of this level be recorded without a gate. */
    private Position first(BenchStudy study, String level) {
        while (!next(study).levels().containsValue(level)) {
            record(study, next(study));
        }
        return next(study);
    }

    private void record(BenchStudy study, Position position) {
        study.record(position, 60, List.of(), Optional.empty(), OffsetDateTime.now(clock), 240, Source.MANUAL);
        study.closeWhenDone(position);
    }

    private SafetyGate.Passage through(BenchStudy study, Position position, SafetyGate.Pass pass) {
        return SafetyGate.pass(study, position, Phase.RUNNING, pass, clock.instant());
    }

    private List<String> refused(BenchStudy study, Position position, SafetyGate.Pass pass) {
        return assertThrows(Refused.class, () -> through(study, position, pass)).problems().stream().map(problem -> problem.where().text() + " " + problem.what())
                .toList();
    }

    private static boolean names(List<String> problems, String rule) {
        return problems.stream().anyMatch(problem -> problem.startsWith("safety rule " + rule));
    }

    @Test
    void aStopHoldsUntilItIsMeasuredToBeOver() {
        try (BenchStudy study = open()) {
            Position position = first(study, "yard");
            int trials = study.view().state().trials().size();
            assertTrue(names(refused(study, position, signed(taken(Reading.PRECIPITATION, "snow"))), "precipitation"));
            assertTrue(names(refused(study, position, signed()), "precipitation"), "leaving the reading out must not open the gate");
            assertEquals(trials, study.view().state().trials().size());
            assertEquals(1, study.view().state().cautionsShown().stream().filter(shown -> shown.event().rule().equals("precipitation")).count());
            through(study, position, signed(taken(Reading.PRECIPITATION, "none")));
        }
    }

    @Test
    void chargingAFrozenCellIsNeverSetAside() {
        try (BenchStudy study = open()) {
            Position position = first(study, "yard");
            Taken[] cold = {taken(Reading.AIR, "-6C"), taken(Reading.CHARGING, "yes")};
            assertTrue(names(refused(study, position, signed(cold)), "charge-frozen-cell"));
            List<String> problems = refused(study, position, pass(Optional.of("Ada"), Map.of("charge-frozen-cell", "it is only a little"), cold));
            assertTrue(problems.get(0).contains("never set aside"), problems::toString);
            through(study, position, signed(taken(Reading.CHARGING, "no")));
        }
    }

    @Test
    void thePlansOwnCellTemperatureTightensTheRuleOnCharging() throws IOException {
        freeze(PLAN + "abort: {cell temperature below: 5 °C while charging}\n");
        try (BenchStudy study = open()) {
            Position position = first(study, "room");
            Taken charging = taken(Reading.CHARGING, "yes");
            assertTrue(names(refused(study, position, signed(charging, taken(Reading.CELL, "4.9 °C"))), "charge-frozen-cell"));
            through(study, position, signed(charging, taken(Reading.CELL, "5 °C")));
        }
    }

    @Test
    void aPlanCannotLoosenTheRuleOnCharging() throws IOException {
        freeze(PLAN + "abort: {cell temperature below: -10 °C while charging}\n");
        try (BenchStudy study = open()) {
            Position position = first(study, "room");
            assertTrue(names(refused(study, position, signed(taken(Reading.CHARGING, "yes"), taken(Reading.CELL, "-0.1 °C"))), "charge-frozen-cell"));
        }
    }

    @Test
    void aStayLongerThanTheDayAllowsIsAStop() throws IOException {
        Files.writeString(folder.resolve("safety.yaml"), "place: {latitude: 47.6, longitude: 12.3}\n");
        clock.set(Instant.parse("2026-01-14T15:00:00Z")); // the sun sets there at about 15:43 UTC; the session takes 28 min, to be over half an hour before
        try (BenchStudy study = open()) {
            assertTrue(names(refused(study, first(study, "yard"), SafetyGate.Pass.NOTHING), "stay-too-long"));
            clock.set(Instant.parse("2026-01-14T14:30:00Z"));
            through(study, first(study, "yard"), SafetyGate.Pass.NOTHING);
        }
    }

    @Test
    void careIsAcknowledgedByNameOnceASession() {
        try (BenchStudy study = open()) {
            Position position = first(study, "yard");
            List<String> problems = refused(study, position, measured(taken(Reading.AIR, "-6C")));
            assertTrue(names(problems, "below-operating-range"), problems::toString);
            assertTrue(names(refused(study, position, SafetyGate.Pass.NOTHING), "below-operating-range"), "the reading stands without being given again");
            through(study, position, signed());
            List<CautionAcknowledged> acknowledged = study.view().state().cautionsAcknowledged().stream().map(one -> one.event()).toList();
            assertTrue(acknowledged.stream().anyMatch(one -> one.rule().equals("below-operating-range") && one.by().equals("Ada")
                    && one.conditions().get("air").amount().getAsDouble() == -6));
            record(study, position);
            through(study, next(study), SafetyGate.Pass.NOTHING);
            assertTrue(names(refused(study, next(study), measured(taken(Reading.ALONE, "yes"))), "lone-working"), "a new caution asks anew");
        }
    }

    @Test
    void aStopSetAsideIsADeviation() {
        try (BenchStudy study = open()) {
            Position position = first(study, "yard");
            through(study, position, pass(Optional.of("Ada"), Map.of("precipitation", "under the eaves"), taken(Reading.PRECIPITATION, "snow")));
            assertTrue(study.view().deviations().contains("the safety rule precipitation was set aside: under the eaves"));
            record(study, position);
            through(study, next(study), SafetyGate.Pass.NOTHING);
        }
    }

    @Test
    void aRuleThatIsNotThereCannotBeSetAside() {
        try (BenchStudy study = open()) {
            List<String> problems = refused(study, next(study), pass(Optional.empty(), Map.of("precipitaton", "x")));
            assertTrue(problems.get(0).contains("no safety rule"), problems::toString);
        }
    }

    @Test
    void unmeasuredThePlansOwnCaresAreRemarksOnly() {
        try (BenchStudy study = open()) {
            SafetyGate.Passage passage = through(study, first(study, "yard"), SafetyGate.Pass.NOTHING);
            assertTrue(passage.remarks().stream().anyMatch(remark -> remark.contains("Nobody measured the air")));
            assertTrue(study.view().state().cautionsAcknowledged().isEmpty());
            assertTrue(study.view().state().startConditions().isEmpty());
        }
    }

    @Test
    void aPlanBelowTheStorageRangeIsStoppedUnmeasured() throws IOException {
        freeze(PLAN.replace("-6 °C", "-21 °C"));
        try (BenchStudy study = open()) {
            assertTrue(names(refused(study, first(study, "yard"), SafetyGate.Pass.NOTHING), "below-storage-range"));
        }
    }

    @Test
    void anIndoorSessionAsksNothing() {
        try (BenchStudy study = open()) {
            SafetyGate.Passage passage = through(study, first(study, "room"), SafetyGate.Pass.NOTHING);
            assertTrue(passage.remarks().isEmpty(), passage.remarks()::toString);
        }
    }

    @Test
    void aStudyTightensARule() throws IOException {
        Files.writeString(folder.resolve("safety.yaml"), "tighten: [{rule: below-storage-range, when: {air: below -5 °C}, reason: the maker's limit}]\n");
        try (BenchStudy study = open()) {
            assertTrue(names(refused(study, first(study, "yard"), SafetyGate.Pass.NOTHING), "below-storage-range"));
        }
    }

    @Test
    void aLoosenedRuleIsWrittenDownOnceAndShownAsADeviation() throws IOException {
        Files.writeString(folder.resolve("safety.yaml"), "loosen: [{rule: below-operating-range, level: note, reason: the maker states -10 °C}]\n");
        try (BenchStudy study = open()) {
            Position position = first(study, "yard");
            List<String> problems = refused(study, position, measured(taken(Reading.AIR, "-6C")));
            assertFalse(names(problems, "below-operating-range"), problems::toString);
            through(study, position, signed());
            record(study, position);
            through(study, next(study), signed());
            assertEquals(1, study.view().deviations().stream().filter(text -> text.contains("below-operating-range was set aside: the maker states -10 °C")).count());
        }
    }

    @Test
    void aDeviceFromTheYardWaitsBeforeItRunsInTheRoom() {
        try (BenchStudy study = open()) {
            Position position = first(study, "yard");
            through(study, position, signed(taken(Reading.AIR, "-6C"), taken(Reading.ROOM_HUMIDITY, "45%")));
            while (next(study).levels().containsValue("yard")) {
                Position trial = next(study);
                through(study, trial, signed(taken(Reading.AIR, "-6C"), taken(Reading.ROOM_HUMIDITY, "45%")));
                record(study, trial);
            }
            Position room = next(study);
            assertTrue(names(refused(study, room, SafetyGate.Pass.NOTHING), "power-on-condensing"));
            Instant cameIn = clock.instant();
            // -6 to 11.6 °C in 21 °C at the slow end of a laptop: ln(27 / 9.4) = 1.055 of 2 * 1800 / (4 * 0.17) = 5294 s is 93 min
            clock.set(cameIn.plus(Duration.ofMinutes(92)));
            assertTrue(names(refused(study, room, SafetyGate.Pass.NOTHING), "power-on-near-dew-point"));
            clock.set(cameIn.plus(Duration.ofMinutes(94)));
            through(study, room, SafetyGate.Pass.NOTHING);
        }
    }

    @Test
    void aMeasuredDeviceNeedNotWaitForTheClock() {
        try (BenchStudy study = open()) {
            first(study, "yard");
            while (next(study).levels().containsValue("yard")) {
                Position trial = next(study);
                through(study, trial, signed(taken(Reading.AIR, "-6C"), taken(Reading.ROOM_HUMIDITY, "45%")));
                record(study, trial);
            }
            through(study, next(study), signed(taken(Reading.DEVICE, "20C")));
        }
    }

    @Test
    void whatWasShownIsWrittenWithItsNumbers() {
        try (BenchStudy study = open()) {
            Position position = first(study, "yard");
            refused(study, position, signed(taken(Reading.AIR, "-25C")));
            List<CautionShown> shown = new ArrayList<>();
            study.view().state().cautionsShown().forEach(one -> shown.add(one.event()));
            assertEquals(-25, shown.stream().filter(one -> one.rule().equals("below-storage-range")).findFirst().orElseThrow().conditions().get("air").amount()
                    .getAsDouble());
        }
    }
}
