package coldproof.report.page;

import coldproof.plan.Plan;
import coldproof.reason.verdict.Compared;
import java.util.List;
import java.util.Optional;

/**
 * A study as it stands in an index of studies.
 *
 * @param folder its name below the folder of the index, with forward slashes; empty for that folder itself
 * @param page address of its report, relative to the index; empty where there is none
 * @param known what is in it; empty where it could not be read
 * @param problem why it could not be read, in a sentence; empty where it could
 */
public record StudyLine(String folder, String page, Optional<Known> known, String problem) {
    /**
     * What is in a study.
     *
     * @param plan its plan
     * @param answers the verdict on each changed level
     * @param trials trials that count
     * @param planned trials of the run sheet
     * @param simulated what simulated its data; empty for real data
     */
    public record Known(Plan plan, List<Compared> answers, int trials, int planned, Optional<String> simulated) {
        /** Copies. */
        public Known {
            answers = List.copyOf(answers);
        }
    }
}
