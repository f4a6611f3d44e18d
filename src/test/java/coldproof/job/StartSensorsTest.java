package coldproof.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.machine.sensors.MachineSensors;
import coldproof.quantity.Refused;
import coldproof.reason.checklist.Ask;
import coldproof.reason.checklist.Question;
import coldproof.reason.safety.Reading;
import coldproof.report.text.ChecklistText;
import coldproof.study.Numbered;
import coldproof.study.Observed;
import coldproof.study.StartConditionsChecked;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Files and units as the Linux kernel documents them: hwmon in m°C, capacity in %, `online` of a source, `status` of a battery. */
class StartSensorsTest {
    private static final String PLAN = """
            coldproof: 1
            title: Is the fan at maximum worth its noise?
            device: trail laptop
            metric: {name: build time, unit: s, better: lower}
            compare: {factor: fan, baseline: auto, against: maximum}
            matters: 2 %
            factors:
              fan: {change: per trial, levels: [auto, maximum]}
            layout: {trials: 4, order: counterbalanced}
            start: {die temperature within: 3 K of first trial, battery at least: 40 %, power source: wall}
            abort: {battery below: 15 %}
            seed: 11
            """;

    @TempDir
    Path folder;
    @TempDir
    Path root;

    private TestBench bench;

    private void put(String file, String text) throws IOException {
        Path path = root.resolve("sys/class").resolve(file);
        Files.createDirectories(path.getParent());
        Files.writeString(path, text + "\n");
    }

    private void laptop(String die, String charge, String online) throws IOException {
        put("hwmon/hwmon0/name", "coretemp");
        put("hwmon/hwmon0/temp1_input", die);
        put("hwmon/hwmon0/temp1_label", "Package id 0");
        put("power_supply/AC/type", "Mains");
        put("power_supply/AC/online", online);
        put("power_supply/BAT0/type", "Battery");
        put("power_supply/BAT0/capacity", charge);
        put("power_supply/BAT0/status", online.equals("1") ? "Full" : "Discharging");
    }

    private TestBench bench() {
        bench = bench == null ? new TestBench(folder, PLAN) : bench;
        return bench;
    }

    /** The study as {@code record} opens it. */
    private BenchStudy study() {
        return BenchStudy.open(bench().folder(), Machine.atHand());
    }

    private LogJob log() {
        return LogJob.open(folder, bench().machine().with(StartSensors.of(new MachineSensors(root, 1).live())));
    }

    private StartConditionsChecked lastCheck() {
        List<StartConditionsChecked> checks = StudyView.read(folder).state().startConditions().stream().map(Numbered::event).toList();
        return checks.get(checks.size() - 1);
    }

    @Test
    void enterTakesWhatASensorShowsAndTheJournalSaysWhich() throws IOException {
        laptop("48460", "83", "1");
        try (LogJob log = log()) {
            log.answer("");
            Question die = log.question();
            assertEquals("die temperature, °C (Enter: 48.5; - not read)", ChecklistText.prompt(die, log.view().plan()));
            assertTrue(ChecklistText.instructions(die, log.view().plan()).contains("This computer's coretemp Package id 0 shows 48.5 °C."));
            log.answer("");
            assertEquals("battery, % (Enter: 83; - not read)", ChecklistText.prompt(log.question(), log.view().plan()));
            log.answer("");
            assertEquals("power source, wall or battery (Enter: wall; - not read)", ChecklistText.prompt(log.question(), log.view().plan()));
            List<String> said = log.answer("").said();
            assertEquals("Start conditions recorded; from this computer's sensors: die temperature 48.5 °C (coretemp Package id 0), battery 83 % (BAT0), "
                    + "power source wall (power supply).", said.get(0));
        }
        assertEquals(Map.of("die temperature", Observed.of(48.5, "°C").by("coretemp Package id 0"), "battery", Observed.of(83, "%").by("BAT0"),
                "power source", Observed.of("wall").by("power supply")), lastCheck().readings());
        assertEquals(List.of(), lastCheck().deviations());
    }

    @Test
    void typingReplacesItAndADashSaysThatItWasNotRead() throws IOException {
        laptop("48460", "83", "1");
        try (LogJob log = log()) {
            log.answer("");
            log.answer("48.5");
            log.answer("-");
            log.answer("w");
        }
        assertEquals(Map.of("die temperature", Observed.of(48.5, "°C"), "power source", Observed.of("wall")), lastCheck().readings());
        assertEquals(List.of("trial 1: the battery was not read"), lastCheck().deviations());
    }

    /** What is on the screen is what Enter takes; the screen follows the sensor after two seconds. */
    @Test
    void enterTakesWhatWasShownLast() throws IOException {
        laptop("60000", "83", "1");
        try (LogJob log = log()) {
            log.answer("");
            assertEquals("60", log.question().usual());
            put("hwmon/hwmon0/temp1_input", "52000");
            assertEquals("60", log.question().usual());
            bench.pass(Duration.ofSeconds(3));
            assertEquals("52", log.question().usual());
            put("hwmon/hwmon0/temp1_input", "40000");
            bench.pass(Duration.ofSeconds(3));
            log.answer("");
            log.answer("");
            log.answer("");
        }
        assertEquals(52, lastCheck().readings().get("die temperature").amount().orElseThrow());
    }

    @Test
    void whatASensorShowsIsJudgedAsWhatIsTyped() throws IOException {
        laptop("48460", "12", "0");
        try (LogJob log = log()) {
            log.answer("");
            log.answer("");
            Refused refused = assertThrows(Refused.class, () -> log.answer(""));
            assertTrue(refused.problems().get(0).what().startsWith("The battery is at 12 %, below the plan's limit"), refused.problems()::toString);
            put("power_supply/BAT0/capacity", "38");
            bench.pass(Duration.ofSeconds(3));
            log.question();
            log.answer("");
            log.answer("");
        }
        assertEquals(List.of("trial 1: battery at 38 %, planned at least 40 %", "trial 1: on battery power, planned wall"), lastCheck().deviations());
    }

    @Test
    void whereNoSensorShowsItEverythingIsAsItWas() throws IOException {
        try (LogJob log = log()) {
            log.answer("");
            assertEquals("die temperature, °C (Enter: not read)", ChecklistText.prompt(log.question(), log.view().plan()));
            assertEquals(Optional.empty(), log.question().shown());
            log.answer("");
            log.answer("");
            assertEquals("power source, wall or battery (Enter: wall)", ChecklistText.prompt(log.question(), log.view().plan()));
            assertEquals("Start conditions recorded.", log.answer("").said().get(0));
        }
        assertEquals(Map.of("power source", Observed.of("wall")), lastCheck().readings());
    }

    /** The air decides over stops: a chip in a warm case must not stand for it unasked. */
    @Test
    void airIsShownAndNeverTakenByEnter() throws IOException {
        put("hwmon/hwmon0/name", "sht3x");
        put("hwmon/hwmon0/temp1_input", "20400");
        put("hwmon/hwmon0/humidity1_input", "41000");
        bench = new TestBench(folder, TestBench.WINTER_PLAN);
        try (LogJob log = log()) {
            assertEquals(Ask.AIR, log.question().ask());
            assertTrue(String.join(" ", ChecklistText.instructions(log.question(), log.view().plan()))
                    .endsWith("This computer's sht3x temp1 shows 20.4 °C; type it if that sensor hangs in this air."));
            assertEquals("", log.question().usual());
            log.answer("");
        }
        assertTrue(StudyView.read(folder).state().startConditions().isEmpty());
    }

    @Test
    void recordReadsItselfAndWritesItWithTheTrial() throws IOException {
        laptop("48460", "38", "1");
        List<String> remarks = new ArrayList<>();
        try (BenchStudy study = study()) {
            assertThrows(Refused.class, () -> record(study, SafetyGate.Pass.NOTHING, remarks, "false"));
            assertTrue(study.view().state().startConditions().isEmpty(), "a run that failed leaves nothing");
            record(study, SafetyGate.Pass.NOTHING, remarks, "true");
        }
        assertEquals(Observed.of(48.5, "°C").by("coretemp Package id 0"), lastCheck().readings().get("die temperature"));
        assertEquals(List.of("trial 1: battery at 38 %, planned at least 40 %"), lastCheck().deviations());
        assertTrue(remarks.contains("Not as planned, recorded as a deviation: trial 1: battery at 38 %, planned at least 40 %"), remarks::toString);
    }

    @Test
    void whatIsGivenToRecordReplacesASensor() throws IOException {
        laptop("48460", "83", "1");
        SafetyGate.Pass given = new SafetyGate.Pass(List.of(new Taken(Reading.POWER, "--power", "battery")), Optional.empty(), Map.of());
        try (BenchStudy study = study()) {
            record(study, given, new ArrayList<>(), "true");
        }
        assertEquals(Observed.of("battery"), lastCheck().readings().get("power source"));
        assertEquals(List.of("trial 1: on battery power, planned wall"), lastCheck().deviations());
    }

    @Test
    void recordKeepsWhatTheChecklistHasAlready() throws IOException {
        laptop("48460", "83", "1");
        try (LogJob log = log()) {
            log.answer("");
            log.answer("47");
            log.answer("80");
            log.answer("wall");
        }
        put("hwmon/hwmon0/temp1_input", "90000");
        try (BenchStudy study = study()) {
            record(study);
        }
        assertEquals(47, lastCheck().readings().get("die temperature").amount().orElseThrow());
        assertFalse(StudyView.read(folder).state().trials().isEmpty());
    }

    /** The second trial of a session must start within 3 K of the first: the die cools while it waits, as told to. */
    @Test
    void recordWaitsForWhatSensorsShow() throws IOException {
        laptop("50000", "83", "1");
        List<String> waited = new ArrayList<>();
        Underway cooling = new Underway() {
            @Override
            public void waits(double elapsedSeconds, List<String> deviations) {
                waited.addAll(deviations);
                try {
                    put("hwmon/hwmon0/temp1_input", "52500");
                } catch (IOException broken) {
                    throw new UncheckedIOException(broken);
                }
            }
        };
        try (BenchStudy study = study()) {
            record(study);
            put("hwmon/hwmon0/temp1_input", "61000");
            settle(study, 30, cooling);
        }
        assertEquals(List.of("trial 2: die at 61 °C, 11 K from the session's first trial; planned within 3 K"), waited);
        assertEquals(List.of(), lastCheck().deviations());
        assertEquals(52.5, lastCheck().readings().get("die temperature").amount().orElseThrow());
    }

    @Test
    void aWaitThatIsOverIsADeviation() throws IOException {
        laptop("50000", "30", "1");
        try (BenchStudy study = study()) {
            settle(study, 0.5, Underway.QUIET);
        }
        assertEquals(List.of("trial 1: battery at 30 %, planned at least 40 %"), lastCheck().deviations());
    }

    private void record(BenchStudy study) {
        record(study, SafetyGate.Pass.NOTHING, new ArrayList<>(), "true");
    }

    private void record(BenchStudy study, SafetyGate.Pass pass, List<String> remarks, String command) {
        next(study, new RecordJob.Request(List.of(command), Optional.empty(), 60), pass, remarks);
    }

    /** A trial that waits so many seconds at most until the start conditions hold. */
    private void settle(BenchStudy study, double seconds, Underway underway) {
        next(study, new RecordJob.Request(List.of("true"), Optional.empty(), 60, seconds, underway), SafetyGate.Pass.NOTHING, new ArrayList<>());
    }

    private void next(BenchStudy study, RecordJob.Request request, SafetyGate.Pass pass, List<String> remarks) {
        RecordJob.next(study, Machine.atHand(), request, pass, remarks::add, new MachineSensors(root, 1));
    }
}
