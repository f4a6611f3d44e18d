package coldproof.job;

import coldproof.files.folder.NewFile;
import coldproof.files.folder.StudyFolder;
import coldproof.files.journal.JournalReader;
import coldproof.report.export.CsvText;
import coldproof.report.export.StudyExport;
import coldproof.report.export.TidyTable;
import coldproof.study.JournalCheck;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

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
}
