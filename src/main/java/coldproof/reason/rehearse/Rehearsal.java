package coldproof.reason.rehearse;

import coldproof.plan.Claim;
import coldproof.plan.NoiseAssumption;
import coldproof.plan.Plan;
import coldproof.plan.RunSheet;
import coldproof.plan.Scheduler;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import coldproof.reason.rehearse.RehearsalReport.Outcome;
import coldproof.reason.rehearse.RehearsalReport.PlanChange;
import coldproof.reason.sizing.PlanSize;
import coldproof.reason.sizing.SizingAnswer;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** Rehearses a study. */
public final class Rehearsal {
    private static final int CHANGES = 3;
    private final RehearsalSettings settings;
    private final Workers workers;
    private final NoiseAssumption noise;

    private Rehearsal(RehearsalSettings settings, Workers workers, NoiseAssumption noise) {
        this.settings = settings;
        this.workers = workers;
        this.noise = noise;
    }

    /**
     * Simulates the whole study under every story, and the changes that would help it most.
     *
     * @param plan with its noise
     * @param sheet its run sheet: the order is part of what is rehearsed
     * @param against the changed level
     * @param settings how many studies, from which seed
     * @param workers who does the work; the result does not depend on them
     * @throws Refused if the plan says nothing about noise
     */
    public static RehearsalReport of(Plan plan, RunSheet sheet, String against, RehearsalSettings settings, Workers workers) {
        NoiseAssumption noise = plan.noise().filter(known -> known.runCvPercent() > 0).orElseThrow(() -> new Refused(Problem.of(
                "the plan says nothing about run-to-run noise, so nothing can be rehearsed", Place.named("noise"), "noise: {run to run: 1.2 %, session to session: 0.8 %}",
                "Measure it with a pilot (coldproof noise), or write down a guess.")));
        return new Rehearsal(settings, workers, noise).of(plan, sheet, against);
    }

    private RehearsalReport of(Plan plan, RunSheet sheet, String against) {
        Script script = new Script(plan, sheet, against);
        SizingAnswer size = PlanSize.of(plan, sheet);
        List<Told> told = new ArrayList<>(new Stories(script, noise).all());
        told.addAll(DeviceStories.of(script, noise, settings.own()));
        List<Outcome> outcomes = new ArrayList<>();
        for (Told one : told) {
            Counts counts = script.rehearse(one, settings, workers);
            outcomes.add(new Outcome(one.story(), counts, script.spent(counts)));
        }
        List<PlanChange> changes = new ArrayList<>();
        for (PlanChanges.Candidate candidate : new PlanChanges(plan, size).best(CHANGES)) {
            changes.add(rehearsed(candidate, against));
        }
        return new RehearsalReport(plan, against, settings, size, outcomes, Weaknesses.of(script, size, outcomes), changes);
    }

    private PlanChange rehearsed(PlanChanges.Candidate candidate, String against) {
        Plan changed = candidate.plan();
        Script script = new Script(changed, Scheduler.draw(changed, new SplittableRandom(changed.seed())), against);
        Stories stories = new Stories(script, noise);
        Counts none = script.rehearse(stories.noChange(), settings, workers);
        Counts matters = script.rehearse(stories.matters(), settings, workers);
        return new PlanChange(candidate.what(), changed, candidate.size(), none, matters, script.spent(changed.claim() == Claim.GAIN ? matters : none));
    }
}
