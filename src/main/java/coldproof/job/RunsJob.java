package coldproof.job;

import coldproof.plan.Change;
import coldproof.plan.Claim;
import coldproof.plan.Layout;
import coldproof.plan.NoiseAssumption;
import coldproof.plan.Plan;
import coldproof.reason.sizing.CheapestStudy;
import coldproof.reason.sizing.PlanSize;
import coldproof.reason.sizing.SearchTerms;
import coldproof.reason.sizing.Size;
import coldproof.reason.sizing.Sizing;
import coldproof.reason.sizing.SizingAnswer;
import coldproof.reason.sizing.SizingQuestion;
import coldproof.reason.sizing.StudyMinutes;
import java.util.Optional;

/** How many runs it takes, and what the plan at hand can see. */
public final class RunsJob {
    private RunsJob() {}

    /** Answers from options alone. */
    public static SizingAnswer ofQuestion(SizingQuestion question) {
        Size size = Sizing.solve(question);
        return new SizingAnswer(Optional.of(size), Optional.empty(), StudyMinutes.UNKNOWN, size.warnings(), question.mattersPercent(), question.power());
    }

    /** What the plan of a study can see, and what its wanted power would take. */
    public static SizingAnswer ofStudy(StudyView study) {
        return PlanSize.of(study.plan(), study.sheet());
    }

    /** The same of a plan that is in no folder yet. */
    public static SizingAnswer ofPlan(Plan plan) {
        return PlanSize.of(plan, StudyView.sheet(plan));
    }

    /**
     * The cheapest layout of a study's question, no outing of it longer than cold and battery allow.
     *
     * @throws coldproof.quantity.Refused if the plan has no sessions, no noise or no time for a trial
     */
    public static CheapestStudy cheapest(StudyView study, SearchTerms terms) {
        return CheapestStudy.of(study.plan(), OutdoorJob.within(study, terms));
    }

    /** Units of each level for a new plan: as many as its noise asks for, a usual number where nothing is known. */
    public static int perLevelFor(Layout.Kind kind, Change change, Claim claim, double mattersPercent, Optional<NoiseAssumption> noise, int trialsPerSession) {
        return PlanSize.perLevelFor(kind, change, claim, mattersPercent, noise, trialsPerSession);
    }
}
