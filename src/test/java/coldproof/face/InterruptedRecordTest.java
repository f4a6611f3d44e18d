package coldproof.face;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.job.Machine;
import coldproof.job.PlanJob;
import coldproof.job.StudyView;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** A program that is told to end while a workload runs: POSIX signal TERM, as a shutdown sends it; Ctrl-C and a closed terminal go the same way in Java. */
@DisabledOnOs(OS.WINDOWS)
class InterruptedRecordTest {
    private static final String PLAN = "coldproof: 1\ntitle: Does the fan change the build?\ndevice: trail laptop\n"
            + "metric: {name: build time, unit: s, better: lower}\ncompare: {factor: fan, baseline: auto, against: maximum}\nmatters: 2 %\n"
            + "factors:\n  fan: {change: per trial, levels: [auto, maximum]}\nlayout: {trials: 6, order: counterbalanced}\nseed: 418\n";

    @TempDir
    Path folder;

    /** The signal reaches the program alone: the workload must not go on without it, nor leave a trace of half a trial. */
    @Test
    void theWorkloadIsStoppedAndNothingIsRecorded() throws IOException, InterruptedException {
        PlanJob.create(folder, PLAN);
        PlanJob.freeze(folder, Machine.atHand(), Optional.empty());
        Path running = folder.resolve("running");
        Process program = new ProcessBuilder(List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC", "-cp", System.getProperty("java.class.path"), "coldproof.face.Main", "record", "--study", folder.toString(), "--", "sh", "-c",
                "touch '" + running + "'; exec sleep 60")).redirectErrorStream(true).redirectOutput(folder.resolve("said").toFile()).start();
        try {
            for (int tries = 0; tries < 600 && !Files.exists(running); tries++) {
                assertTrue(program.isAlive());
                Thread.sleep(50);
            }
            List<ProcessHandle> workload = program.descendants().toList();
            assertFalse(workload.isEmpty());
            program.destroy();
            assertTrue(program.waitFor(20, TimeUnit.SECONDS));
            for (ProcessHandle each : workload) {
                each.onExit().orTimeout(10, TimeUnit.SECONDS).join();
            }
        } finally {
            program.descendants().forEach(ProcessHandle::destroyForcibly);
            program.destroyForcibly();
        }
        assertEquals(143, program.exitValue()); // 128 and the number of the signal, as POSIX shells count
        assertEquals(List.of(), StudyView.read(folder).state().trials());
        try (Stream<Path> traces = Files.list(folder.resolve("traces"))) {
            assertEquals(List.of(), traces.toList());
        }
        assertTrue(Files.readString(folder.resolve("said")).contains("interrupted; the workload was stopped"));
    }
}
