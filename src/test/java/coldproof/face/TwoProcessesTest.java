package coldproof.face;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.files.journal.JournalReader;
import coldproof.files.journal.Reading;
import coldproof.job.LogJob;
import coldproof.job.Machine;
import coldproof.job.PlanJob;
import coldproof.quantity.Refused;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Two processes at one study: the second is told who holds it, and a holder that was killed holds nothing. */
class TwoProcessesTest {
    private static final String PLAN = "coldproof: 1\ntitle: Does the fan change the build?\ndevice: trail laptop\n"
            + "metric: {name: build time, unit: s, better: lower}\ncompare: {factor: fan, baseline: auto, against: maximum}\nmatters: 2 %\n"
            + "factors:\n  fan: {change: per trial, levels: [auto, maximum]}\nlayout: {trials: 6, order: counterbalanced}\nseed: 418\n";
    @TempDir
    private Path folder;
    private final List<Process> started = new ArrayList<>();

    private Process start(String... words) throws IOException {
        List<String> command = new ArrayList<>(List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC", "-cp", System.getProperty("java.class.path"), "coldproof.face.Main"));
        command.addAll(List.of(words));
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        started.add(process);
        return process;
    }

    @AfterEach
    void end() throws InterruptedException {
        for (Process process : started) {
            process.destroyForcibly().waitFor();
        }
    }

    private static String until(String words, Process process) throws IOException {
        InputStream out = process.getInputStream();
        StringBuilder said = new StringBuilder();
        while (said.indexOf(words) < 0) {
            int next = out.read();
            assertTrue(next >= 0, () -> "ended without \"" + words + "\": " + said);
            said.append((char) next);
        }
        return said.toString();
    }

    private static void type(Process process, String line) throws IOException {
        process.getOutputStream().write((line + "\n").getBytes(StandardCharsets.UTF_8));
        process.getOutputStream().flush();
    }

    @Test
    void theSecondIsToldWhoHoldsTheStudyAndAKilledHolderHoldsNothing() throws IOException, InterruptedException {
        PlanJob.create(folder, PLAN);
        PlanJob.freeze(folder, Machine.atHand(), Optional.empty());
        Process holder = start("log", "--study", folder.toString());
        type(holder, "");
        type(holder, "100.25");
        until("100.25 s. Recorded.", holder);
        String before = Files.readString(folder.resolve("journal.jsonl"));
        String who = "this study is open in another process: process " + holder.pid() + " since ";

        Process second = start("log", "--study", folder.toString());
        second.getOutputStream().close();
        String told = new String(second.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertEquals(2, second.waitFor(), told);
        assertTrue(told.replaceAll("\\s+", " ").contains(who), told);
        Refused refused = assertThrows(Refused.class, () -> LogJob.open(folder, Machine.atHand()).close());
        assertTrue(refused.problems().get(0).what().startsWith(who), refused.problems()::toString);
        assertEquals(before, Files.readString(folder.resolve("journal.jsonl")));
        assertTrue(holder.isAlive());

        holder.toHandle().destroyForcibly();
        assertTrue(holder.waitFor(10, TimeUnit.SECONDS));
        LogJob next = LogJob.open(folder, Machine.atHand());
        Refused itself = assertThrows(Refused.class, () -> LogJob.open(folder, Machine.atHand()).close());
        next.close();
        assertTrue(itself.problems().get(0).what().endsWith(": this process"), itself.problems()::toString);
        Reading reading = JournalReader.read(folder.resolve("journal.jsonl"));
        assertTrue(reading.isSound(), reading.damages()::toString);
        assertTrue(Files.readString(folder.resolve("journal.jsonl")).startsWith(before));
    }
}
