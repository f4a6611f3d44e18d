package coldproof.report.page;

import coldproof.plan.Plan;
import coldproof.plan.RunSheet;
import coldproof.reason.limiter.LimiterAnswer;
import coldproof.reason.limiter.LimiterTrial;
import coldproof.reason.sizing.SizingAnswer;
import coldproof.reason.verdict.Compared;
import coldproof.study.StudyState;
import coldproof.trace.Channel;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Everything a report on a study is made from.
 *
 * @param plan the plan in force
 * @param planText its file as frozen, else as it lies on disk
 * @param frozen whether it is frozen
 * @param sheet the run sheet
 * @param state what happened
 * @param answers the verdict on each changed level
 * @param deviations where the study left its plan
 * @param journalProblems what is wrong with the journal file, one sentence each
 * @param sizing what the plan can see
 * @param traces telemetry of the trials
 * @param made by what and from which files
 * @param names whether the names people signed with are shown
 */
public record StudyContent(Plan plan, Optional<String> planText, boolean frozen, RunSheet sheet, StudyState state, List<Compared> answers,
        List<String> deviations, List<String> journalProblems, SizingAnswer sizing, Traces traces, Made made, boolean names) {
    /** Copies. */
    public StudyContent {
        answers = List.copyOf(answers);
        deviations = List.copyOf(deviations);
        journalProblems = List.copyOf(journalProblems);
    }

    /**
     * Telemetry of the trials.
     *
     * @param trials those whose trace was read, in the order run
     * @param unread what was wrong with the others, one sentence each
     * @param limiter what holds the device back; empty where no trace was read
     * @param pinned channels that sit at one value, by levels of the condition
     */
    public record Traces(List<LimiterTrial> trials, List<String> unread, Optional<LimiterAnswer> limiter, Map<Map<String, String>, Set<Channel>> pinned) {
        /** No telemetry. */
        public static final Traces NONE = new Traces(List.of(), List.of(), Optional.empty(), Map.of());

        /** Copies. */
        public Traces {
            trials = List.copyOf(trials);
            unread = List.copyOf(unread);
        }
    }

    /**
     * What the report was made by and from.
     *
     * @param version of the program
     * @param digests of the files read
     */
    public record Made(String version, List<Digest> digests) {
        /** Copies. */
        public Made {
            digests = List.copyOf(digests);
        }
    }

    /**
     * The digest of a file.
     *
     * @param file its name in the study folder
     * @param sha256 lower-case hexadecimal
     */
    public record Digest(String file, String sha256) {}
}
