package coldproof.job;

import coldproof.files.folder.StudyFolder;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * Where a study stands in the whole job.
 *
 * @param folder the folder looked at
 * @param stage how far it is
 * @param study the study; empty where there is none, or it cannot be read
 * @param problems why it cannot be read
 * @param reported whether a report was made
 */
public record StudyOverview(Path folder, Stage stage, Optional<StudyView> study, List<Problem> problems, boolean reported) {
    /** The stages of the job. */
    public enum Stage {
        /** There is no plan and no journal here. */
        NO_STUDY,
        /** What is here cannot be read. */
        BROKEN,
        /** There is a plan that is not frozen yet. */
        PLANNED,
        /** The plan is frozen, trials are to be run. */
        RUNNING,
        /** Every trial is settled. */
        RUN
    }

    /** Whether a folder holds a study, readable or not. */
    public static boolean isStudy(Path folder) {
        return StudyFolder.hasJournal(folder) || PlanFile.exists(folder);
    }

    /** Looks at a folder. */
    public static StudyOverview of(Path folder) {
        boolean reported = Files.exists(StudyFolder.report(folder));
        if (!isStudy(folder)) {
            return new StudyOverview(folder, Stage.NO_STUDY, Optional.empty(), List.of(), reported);
        }
        try {
            StudyView study = StudyView.read(folder);
            Stage stage = !study.frozen() ? Stage.PLANNED : study.next().isPresent() ? Stage.RUNNING : Stage.RUN;
            return new StudyOverview(folder, stage, Optional.of(study), study.problems(), reported);
        } catch (Refused broken) {
            return new StudyOverview(folder, Stage.BROKEN, Optional.empty(), broken.problems(), reported);
        }
    }
}
