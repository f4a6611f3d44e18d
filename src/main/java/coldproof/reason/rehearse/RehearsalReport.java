package coldproof.reason.rehearse;

import coldproof.plan.Plan;
import coldproof.reason.sizing.SizingAnswer;
import coldproof.reason.sizing.Warning;
import java.util.List;

/**
 * What a rehearsal showed.
 *
 * @param plan the plan
 * @param against the changed level it was rehearsed for
 * @param settings how it was done
 * @param size what the plan can see by exact calculation, and what it takes
 * @param stories how it ended under each story
 * @param weaknesses where the plan may fail
 * @param changes the changes of the plan that help most, each rehearsed
 */
public record RehearsalReport(Plan plan, String against, RehearsalSettings settings, SizingAnswer size, List<Outcome> stories, List<Warning> weaknesses,
        List<PlanChange> changes) {
    /** Copies. */
    public RehearsalReport {
        stories = List.copyOf(stories);
        weaknesses = List.copyOf(weaknesses);
        changes = List.copyOf(changes);
    }

    /**
     * A story with its end.
     *
     * @param story what was true
     * @param counts how the studies ended
     * @param spent what they took
     */
    public record Outcome(Story story, Counts counts, Spent spent) {}

    /**
     * A change of the plan.
     *
     * @param what to do, in words
     * @param plan the plan so changed
     * @param size what it can see, and what it takes
     * @param noChange how it ended when nothing changes
     * @param matters how it ended when the change matters
     * @param spent what the studies of the deciding story took: the gain that matters, or for sameness no change
     */
    public record PlanChange(String what, Plan plan, SizingAnswer size, Counts noChange, Counts matters, Spent spent) {}

    /** The end of a story of this kind. */
    public Counts of(Story.Kind kind) {
        return outcome(kind).counts();
    }

    /** The story of this kind with its end. */
    public Outcome outcome(Story.Kind kind) {
        return stories.stream().filter(outcome -> outcome.story().kind() == kind).findFirst()
                .orElseThrow(() -> new IllegalArgumentException("the story " + kind + " was not rehearsed"));
    }
}
