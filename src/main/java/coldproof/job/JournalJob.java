package coldproof.job;

import coldproof.files.folder.NewFile;
import coldproof.files.folder.StudyFolder;
import coldproof.files.folder.StudyMending;
import coldproof.files.journal.JournalReader;
import coldproof.files.journal.JournalRepair;
import coldproof.quantity.Counted;
import coldproof.report.export.CsvText;
import coldproof.report.export.StudyExport;
import coldproof.report.export.TidyTable;
import coldproof.study.JournalChange;
import coldproof.study.JournalCheck;
import coldproof.study.MergeChoice;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Looks after the journal of a study: checks it, gives its tables away, mends it, merges two copies. */
public final class JournalJob {
    private JournalJob() {}

    /**
     * Looks at a journal without changing it; works while another process writes to it.
     *
     * @param place a study folder, or a journal file by itself
     * @throws coldproof.quantity.Refused if there is no journal or the system does not let it be read
     */
    public static JournalCheck check(Path place) {
        if (Files.isRegularFile(place)) {
            return JournalReader.read(place).check(place.toString());
        }
        return StudyFolder.read(place).check(StudyFolder.journal(place).toString());
    }

    /**
     * The tables of a study.
     *
     * @throws coldproof.quantity.Refused if there is no study
     */
    public static List<TidyTable> tables(Path study) {
        StudyView view = StudyView.read(study);
        return StudyExport.tables(view.plan(), view.state());
    }

    /**
     * Writes tables as files, one a table.
     *
     * @return the files
     * @throws coldproof.quantity.Refused if a file is there already or cannot be written; those written before it stay
     */
    public static List<Path> write(List<TidyTable> tables, Path folder) {
        List<Path> files = new ArrayList<>();
        for (TidyTable table : tables) {
            Path file = folder.resolve(table.name() + ".csv");
            NewFile.write(file, CsvText.of(table));
            files.add(file);
        }
        return files;
    }

    /**
     * Writes a sound journal in the place of a damaged one, which is kept.
     *
     * @throws coldproof.quantity.Refused if there is no journal, another process holds the study, no entry can be read, or the files cannot
     *     be written
     */
    public static JournalChange repair(Path study, Machine machine) {
        Optional<JournalRepair.Repaired> done = StudyMending.repair(study, machine.journalClock());
        List<String> said = done.map(repaired -> List.of(Counted.of(repaired.entriesKept(), "entry was", "entries were") + " kept, "
                + Counted.of(repaired.entriesLost(), "entry was", "entries were") + " unreadable and left " + (repaired.entriesLost() == 1 ? "its number to one" : "their numbers to some")
                + " that says so")).orElse(List.of("the journal is sound; nothing was changed"));
        return new JournalChange(done.map(JournalRepair.Repaired::keptAs), said, check(study));
    }

    /**
     * Merges another copy of the study, or a journal that went on elsewhere, into this study.
     *
     * @throws coldproof.quantity.Refused if one is damaged, they are not copies of one study, a conflict is left, or the files cannot be
     *     written; the problems name the entries
     */
    public static JournalChange merge(Path study, Path other, MergeChoice choice, Machine machine) {
        StudyMending.Merged merged = StudyMending.merge(study, other, choice, machine.journalClock());
        List<String> said = new ArrayList<>();
        said.add(Counted.of(merged.entries().common(), "entry is", "entries are") + " in both, " + merged.entries().fromFirst() + " only here, "
                + merged.entries().fromSecond() + " only in the other" + (merged.keptAs().isEmpty() ? "; nothing was changed" : ""));
        merged.entries().conflicts().forEach(conflict -> said.add("settled in favour of the " + choice.word() + " copy: " + conflict.what()));
        said.addAll(merged.entries().remarks());
        merged.traces().forEach(trace -> said.add("copied " + trace));
        merged.missingTraces().forEach(trace -> said.add("not found in either copy: " + trace));
        return new JournalChange(merged.keptAs(), said, check(study));
    }
}
