package coldproof.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.files.folder.StudyFolder;
import coldproof.study.PlanFrozen;
import coldproof.study.SessionClosed;
import coldproof.study.Source;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Which plan a study is judged by, whatever became of plan.yaml. */
class StudyViewTest {
    @TempDir
    Path folder;

    private Path file;
    private String frozen;

    @BeforeEach
    void freezeAPlan() throws IOException {
        frozen = ReadyPlans.text("chilled-air");
        file = PlanJob.create(folder, frozen);
        PlanJob.freeze(folder, BenchFixture.machine(folder), Optional.empty());
    }

    @Test
    void theFrozenPlanOnDiskIsUnchanged() {
        StudyView study = StudyView.read(folder);
        assertTrue(study.frozen());
        assertFalse(study.changedSinceFrozen());
        assertEquals(3, study.plan().mattersPercent());
        assertEquals(PlanFile.of(folder).digest(), study.planDigest());
    }

    @Test
    void aChangedPlanOnDiskDoesNotCount() throws IOException {
        Files.writeString(file, frozen.replace("matters: 3 %", "matters: 1 %"), StandardCharsets.UTF_8);
        assertEquals(1, PlanFile.of(folder).plan().mattersPercent());
        thePlanAsFrozenCounts();
    }

    @Test
    void evenASpaceMoreIsAChange() throws IOException {
        Files.writeString(file, frozen + " ", StandardCharsets.UTF_8);
        thePlanAsFrozenCounts();
    }

    @Test
    void aPlanOnDiskThatCannotBeReadDoesNotCount() throws IOException {
        Files.writeString(file, "matters: [", StandardCharsets.UTF_8);
        thePlanAsFrozenCounts();
        Files.write(file, new byte[] {(byte) 0xff, (byte) 0xfe, 0});
        thePlanAsFrozenCounts();
        Files.delete(file);
        thePlanAsFrozenCounts();
    }

    private void thePlanAsFrozenCounts() {
        StudyView study = StudyView.read(folder);
        assertTrue(study.frozen());
        assertTrue(study.changedSinceFrozen());
        assertEquals(3, study.plan().mattersPercent());
    }

    /** Such as one written by another program. */
    @Test
    void aJournalThatHoldsTheDigestAloneTellsAChangedPlanByIt(@TempDir Path other) throws IOException {
        PlanJob.create(other, frozen);
        try (StudyFolder study = StudyFolder.create(other, BenchFixture.machine(other).journalClock())) {
            study.journal().append(new PlanFrozen(PlanFile.of(other).digest(), Optional.empty()));
        }
        assertFalse(StudyView.read(other).changedSinceFrozen());
        Files.writeString(other.resolve(PlanFile.NAME), frozen.replace("matters: 3 %", "matters: 1 %"), StandardCharsets.UTF_8);
        StudyView changed = StudyView.read(other);
        assertTrue(changed.changedSinceFrozen());
        assertFalse(changed.keepsFrozen());
        assertTrue(changed.deviations().get(0).endsWith("the changed plan is the one judged by"), changed.deviations().toString());
    }

    @Test
    void trialsLeftOfABrokenOffSessionAreNotToCome() {
        Machine machine = BenchFixture.machine(folder);
        try (BenchStudy study = BenchStudy.open(folder, machine)) {
            study.record(study.view().next().orElseThrow(), 50, List.of(), Optional.empty(), OffsetDateTime.now(machine.wall()), 60, Source.SIMULATED);
            study.endSession(SessionClosed.Ending.ABORTED, "it began to rain");
        }
        StudyView study = StudyView.read(folder);
        assertEquals(28, study.toCome()); // 8 sessions of 4 trials
        assertTrue(study.deviations().contains("28 of 32 planned trials are not run yet"), study.deviations().toString());
        assertTrue(study.deviations().contains("3 of 32 planned trials were left of a session that was broken off"), study.deviations().toString());
    }
}
