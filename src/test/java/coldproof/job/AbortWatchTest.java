package coldproof.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.machine.sensors.MachineSensors;
import coldproof.quantity.Refused;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AbortWatchTest {
    private static final String PLAN = """
            coldproof: 1
            title: Does the fan help?
            device: trail laptop
            metric: {name: time, unit: s, better: lower}
            compare: {factor: fan, baseline: auto, against: maximum}
            matters: 3 %
            factors:
              fan: {change: per trial, levels: [auto, maximum]}
            layout: {trials: 4, order: counterbalanced}
            abort: {die temperature above: 95 °C, battery below: 15 %, cell temperature below: 5 °C while charging}
            seed: 7
            """;

    private static final double EVERY_SECONDS = 0.05;

    @TempDir
    Path folder;
    @TempDir
    Path sensors;

    private void put(String file, String text) throws IOException {
        Path path = sensors.resolve("sys/class").resolve(file);
        Files.createDirectories(path.getParent());
        Files.writeString(path, text + "\n");
    }

    private void sensors(String die, String charge, String cell, String status) throws IOException {
        put("hwmon/hwmon0/name", "coretemp");
        put("hwmon/hwmon0/temp1_input", die);
        put("power_supply/BAT0/type", "Battery");
        put("power_supply/BAT0/capacity", charge);
        put("power_supply/BAT0/temp", cell);
        put("power_supply/BAT0/status", status);
    }

    private BenchStudy study() throws IOException {
        Files.writeString(folder.resolve("plan.yaml"), PLAN);
        PlanJob.freeze(folder, Machine.atHand(), Optional.empty());
        return BenchStudy.open(folder, Machine.atHand());
    }

    private Optional<RecordJob.Recorded> run(BenchStudy study, List<String> remarks, String... command) {
        RecordJob.Request request = new RecordJob.Request(List.of(command), Optional.empty(), 60);
        return RecordJob.next(study, Machine.atHand(), request, SafetyGate.Pass.NOTHING, remarks::add, new MachineSensors(sensors, EVERY_SECONDS));
    }

    @ParameterizedTest(name = "die {0} m°C, charge {1} %, cell {2} dK, {3}: {4}")
    @CsvSource({"95000, 15, 50, Charging, ''", "95100, 15, 50, Charging, die", "95000, 14, 50, Charging, battery", "95000, 15, 49, Charging, cell",
        "95000, 15, 49, Discharging, ''", "95000, 15, -60, Full, ''"})
    void aTrialIsNotStartedBeyondALimit(String die, String charge, String cell, String status, String broken) throws IOException {
        sensors(die, charge, cell, status);
        try (BenchStudy study = study()) {
            if (broken.isEmpty()) {
                assertTrue(run(study, new ArrayList<>(), "true").isPresent());
                return;
            }
            Refused refused = assertThrows(Refused.class, () -> run(study, new ArrayList<>(), "true"));
            assertTrue(refused.problems().get(0).what().startsWith("the " + broken), refused.problems()::toString);
            assertTrue(study.view().state().trials().isEmpty());
            assertEquals(1, study.view().state().notes().size());
        }
    }

    @Test
    void aRunningTrialIsStoppedAndNotRecorded() throws IOException {
        sensors("60000", "80", "200", "Discharging");
        Path die = sensors.resolve("sys/class/hwmon/hwmon0/temp1_input");
        try (BenchStudy study = study()) {
            long start = System.nanoTime();
            Refused refused = assertThrows(Refused.class, () -> run(study, new ArrayList<>(), "sh", "-c", "echo 99000 > '" + die + "'; sleep 50"));
            assertTrue((System.nanoTime() - start) / 1e9 < 40, "it was let run");
            assertTrue(refused.problems().get(0).what().contains("the die is at 99.0 °C, above the plan's limit of 95.0 °C; the workload was stopped after"));
            assertTrue(study.view().state().trials().isEmpty());
        }
    }

    /** Five small files read twenty times a second: a share of the time, so above nothing and far from all of it, whatever else the machine does. */
    @Test
    void whatTelemetryTakesIsTold() throws IOException {
        sensors("60000", "80", "200", "Discharging");
        try (BenchStudy study = study()) {
            RecordedTelemetry log = run(study, new ArrayList<>(), "sleep", "0.6").orElseThrow().telemetry().orElseThrow();
            List<String> lines = Files.readAllLines(folder.resolve(log.file()));
            assertEquals(lines.size() - 1, log.rows());
            assertEquals(lines.get(0).split(",").length - 1, log.sensors());
            assertTrue(log.costPercent() > 0 && log.costPercent() < 100, log::toString);
            assertEquals(Optional.of(log.file()), study.view().state().trials().get(0).recorded().trace());
        }
    }

    @Test
    void aLimitWithoutASensorIsSaid() throws IOException {
        try (BenchStudy study = study()) {
            List<String> remarks = new ArrayList<>();
            assertTrue(run(study, remarks, "true").isPresent());
            assertEquals(3, remarks.stream().filter(remark -> remark.contains("is not watched")).count());
        }
    }
}
