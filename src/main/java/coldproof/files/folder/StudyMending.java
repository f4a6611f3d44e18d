package coldproof.files.folder;

import coldproof.files.journal.JournalClock;
import coldproof.files.journal.JournalMerge;
import coldproof.files.journal.JournalReader;
import coldproof.files.journal.JournalRepair;
import coldproof.files.journal.Reading;
import coldproof.files.journal.SystemDisk;
import coldproof.quantity.Refused;
import coldproof.study.MergeChoice;
import coldproof.study.MergedEntries;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/** What rewrites a journal while the study is held: repairing it, and merging another copy into it. Nothing is ever deleted. */
public final class StudyMending {
    private StudyMending() {}

    /**
     * Repairs the journal of a study.
     *
     * @return what was done; empty when it is sound
     * @throws Refused if there is no journal, another process holds the study, no entry can be read, or the files cannot be written
     */
    public static Optional<JournalRepair.Repaired> repair(Path folder, JournalClock clock) {
        StudyFolder.read(folder);
        return holding(folder, clock, () -> JournalRepair.repair(new SystemDisk(), StudyFolder.journal(folder), clock));
    }

    /**
     * What merging did.
     *
     * @param entries the merged entries
     * @param keptAs name of the file that keeps the journal as it was; empty when the other had nothing new and nothing was changed
     * @param traces telemetry files copied from the other, by name in the folder
     * @param missingTraces those that are not there
     */
    public record Merged(MergedEntries entries, Optional<String> keptAs, List<String> traces, List<String> missingTraces) {
        /** Copies the lists. */
        public Merged {
            traces = List.copyOf(traces);
            missingTraces = List.copyOf(missingTraces);
        }
    }

    /**
     * Merges another copy of the study into this one.
     *
     * @param other a study folder, or a journal by itself
     * @throws Refused if one is damaged, they are not copies of one study, a conflict is left, or the files cannot be written
     */
    public static Merged merge(Path folder, Path other, MergeChoice choice, JournalClock clock) {
        StudyFolder.read(folder);
        Path otherJournal = Files.isDirectory(other) ? StudyFolder.journal(other) : other;
        Reading second = JournalReader.read(otherJournal);
        return holding(folder, clock, () -> {
            Path journal = StudyFolder.journal(folder);
            Reading first = JournalReader.read(journal);
            MergedEntries merged = JournalMerge.plan(journal, first, otherJournal, second, choice);
            if (merged.fromSecond() == 0) {
                return new Merged(merged, Optional.empty(), List.of(), List.of());
            }
            TraceCopies traces = new TraceCopies(folder, otherJournal.toAbsolutePath().getParent(), merged);
            traces.copy();
            String kept = JournalMerge.write(new SystemDisk(), journal, first, merged, choice, clock);
            return new Merged(merged, Optional.of(kept), traces.copied(), traces.missing());
        });
    }

    private static <T> T holding(Path folder, JournalClock clock, Supplier<T> work) {
        StudyLock lock = StudyLock.take(StudyFolder.lock(folder), ProcessHandle.current().pid(), OffsetDateTime.now(clock.wall()));
        try {
            return work.get();
        } finally {
            StudyFolder.unlock(folder, lock);
        }
    }
}
