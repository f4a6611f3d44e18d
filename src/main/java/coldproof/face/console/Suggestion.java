package coldproof.face.console;

import coldproof.job.StudyOverview;
import coldproof.job.StudyView;
import coldproof.plan.Position;
import coldproof.reason.checklist.Progress;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What comes next in the job, and the words that do it.
 *
 * @param words verb and options, as Enter alone runs them
 * @param why what it is for, a sentence
 */
record Suggestion(List<String> words, String why) {
    /**
     * The next step of a study.
     *
     * @param seen what was run since the study last changed, each as typed
     * @param verbs the verbs there are
     */
    static Suggestion of(StudyOverview overview, Set<String> seen, Set<String> verbs) {
        return switch (overview.stage()) {
            case NO_STUDY -> new Suggestion(List.of("plan", "new"), "be asked, step by step, for the plan of a study");
            case BROKEN -> new Suggestion(List.of("plan", "check"), "see what is wrong with the plan");
            case PLANNED -> planned(overview.study().orElseThrow(), seen, verbs);
            case RUNNING -> running(overview.study().orElseThrow());
            case RUN -> run(overview, seen, verbs);
        };
    }

    private static Suggestion planned(StudyView study, Set<String> seen, Set<String> verbs) {
        if (!seen.contains("plan check")) {
            return new Suggestion(List.of("plan", "check"), "see whether this plan can tell the change from the noise");
        }
        if (verbs.contains("rehearse") && study.plan().noise().isPresent() && !seen.contains("rehearse")) {
            return new Suggestion(List.of("rehearse"), "simulate the whole study before anyone freezes");
        }
        return new Suggestion(List.of("plan", "freeze"), "fix the plan before the first trial");
    }

    private static Suggestion running(StudyView study) {
        Optional<Position> next = study.next();
        String trial = next.isEmpty() ? "" : "trial " + next.get().number() + " of " + study.sheet().positions().size() + ": "
                + Progress.condition(study.plan(), next.get());
        boolean itself = !study.plan().workload().command().isEmpty() || !study.plan().workload().commandByLevel().isEmpty();
        return itself ? new Suggestion(List.of("record"), "run the workload of " + trial) : new Suggestion(List.of("log"), trial);
    }

    private static Suggestion run(StudyOverview overview, Set<String> seen, Set<String> verbs) {
        if (!seen.contains("verdict")) {
            return new Suggestion(List.of("verdict"), "judge the change");
        }
        if (verbs.contains("limiter") && !seen.contains("limiter")) {
            return new Suggestion(List.of("limiter"), "see what held the device back");
        }
        if (verbs.contains("report") && !(overview.reported() && seen.contains("report"))) {
            return new Suggestion(List.of("report"), "make the page that shows others why to believe it");
        }
        return new Suggestion(List.of("verdict"), "see the verdict again");
    }

    /** The words in a line. */
    String line() {
        return String.join(" ", words);
    }
}
