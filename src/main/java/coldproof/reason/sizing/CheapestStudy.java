package coldproof.reason.sizing;

import coldproof.plan.Budget;
import coldproof.plan.Change;
import coldproof.plan.Claim;
import coldproof.plan.Factor;
import coldproof.plan.Layout;
import coldproof.plan.NoiseAssumption;
import coldproof.plan.Order;
import coldproof.plan.Plan;
import coldproof.quantity.LogRatio;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import coldproof.reason.looks.PlannedEffects;
import coldproof.reason.sizing.StudyLimits.Limit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The cheapest way to lay out a plan's question.
 *
 * @param plan the plan as it is
 * @param terms what the search was told
 * @param cost what things cost
 * @param advice what the search found
 * @param planned the plan's own layout, priced alike
 */
public record CheapestStudy(Plan plan, SearchTerms terms, StudyCost cost, PlanAdvice advice, PlannedStudy planned) {
    /**
     * Searches all numbers of sessions and trials.
     *
     * @throws Refused if the plan has no sessions, no noise or no time for a trial
     */
    public static CheapestStudy of(Plan plan, SearchTerms terms) {
        return of(plan, terms, plan.errors().power());
    }

    /**
     * The same for another power than the plan's, as for a study that looks early and loses a little by it.
     *
     * @param wanted in (0, 1)
     * @throws Refused likewise
     */
    public static CheapestStudy of(Plan plan, SearchTerms terms, double wanted) {
        check(plan);
        NoiseAssumption noise = plan.noise().orElseThrow();
        StudyCost cost = cost(plan, terms);
        int conditions = otherConditions(plan);
        double run = LogRatio.logSdOfCv(noise.runCvPercent());
        PlanSpace.Levels levels = levels(plan, conditions);
        PlanSpace space = plan.comparesSessions() ? new PlanSpace(false, run, LogRatio.logSdOfCv(noise.sessionCvPercent()), conditions, 2, cost, levels)
                : new PlanSpace(true, run, 0, conditions, Math.max(1, plan.layout().counts().size()), cost, levels);
        StudyLimits limits = limits(plan, terms);
        PlanAdvice advice = CheapestPlan.search(space, limits, power(plan), wanted);
        return new CheapestStudy(plan, terms, cost, advice, planned(plan, space));
    }

    private static void check(Plan plan) {
        if (plan.layout().kind() != Layout.Kind.SESSIONS) {
            throw refused("a plan in one sitting has no sessions to share out", "layout", "a layout with sessions",
                    "For a single sitting coldproof runs gives the smallest number of trials or pairs.");
        }
        if (plan.noise().isEmpty() || !(plan.noise().get().runCvPercent() > 0)) {
            throw refused("the plan says nothing about run-to-run noise", "noise", "noise: {run to run: 1.2 %, session to session: 0.8 %}",
                    "Measure it with a pilot (coldproof noise), or write down a guess.");
        }
        if (plan.budget().trialSeconds().isEmpty()) {
            throw refused("the budget does not say how long a trial takes, so no plan can be priced", "budget", "budget: {trial: 4 min, soak: 20 min}",
                    "Time one trial with what belongs to it, and write it down.");
        }
    }

    private static Refused refused(String what, String where, String expected, String remedy) {
        return new Refused(Problem.of(what, Place.named(where), expected, remedy));
    }

    private static PlanSpace.Levels levels(Plan plan, int conditions) {
        int changes = plan.compare().against().size();
        return changes == 1 ? PlanSpace.Levels.ofOneChange(conditions)
                : new PlanSpace.Levels(changes, plan.comparedFactor().levels().size(), left -> PlannedEffects.withinSessions(plan, changes + 1, left));
    }

    /** Conditions of the other per-trial factors. */
    private static int otherConditions(Plan plan) {
        int conditions = 1;
        for (Factor factor : plan.factors()) {
            boolean other = factor.change() == Change.PER_TRIAL && !factor.name().equals(plan.compare().factor());
            conditions *= other ? factor.levels().size() : 1;
        }
        return conditions;
    }

    /** Where every session has all levels, a session costs what the dearest of the per-session factor's levels costs. */
    private static StudyCost cost(Plan plan, SearchTerms terms) {
        Budget budget = plan.budget();
        String baseline = plan.comparesSessions() ? plan.compare().baseline() : dearest(plan);
        List<String> against = plan.comparesSessions() ? changed(plan) : List.of(baseline);
        StudyCost stated = StudyCost.of(budget, baseline, against).weighingOutdoors(terms.outdoorWeight()).travelling(terms.travelSecondsPerOuting());
        return new StudyCost(stated.trialSeconds(), stated.baseline(), stated.against(), stated.travelSecondsPerOuting(), stated.outdoorWeight(),
                terms.wattHoursOpening(), terms.wattHoursPerTrial());
    }

    /** The levels that are changed; where several are judged, also those that are laid out only. */
    private static List<String> changed(Plan plan) {
        return plan.compare().against().size() == 1 ? plan.compare().against()
                : plan.layout().counts().keySet().stream().filter(level -> !level.equals(plan.compare().baseline())).toList();
    }

    private static String dearest(Plan plan) {
        List<String> levels = plan.sessionFactor().map(Factor::levelNames).orElse(List.of(""));
        String dearest = levels.get(0);
        for (String level : levels) {
            dearest = plan.budget().openingSeconds(level) > plan.budget().openingSeconds(dearest) ? level : dearest;
        }
        return dearest;
    }

    private static StudyLimits limits(Plan plan, SearchTerms terms) {
        boolean given = terms.limits().most().containsKey(Limit.OUTDOORS_IN_ALL);
        return plan.budget().outdoorsAtMostSeconds().isPresent() && !given
                ? terms.limits().with(Limit.OUTDOORS_IN_ALL, plan.budget().outdoorsAtMostSeconds().getAsDouble()) : terms.limits();
    }

    /** What the verdict will decide by: several changes together, as {@link PlanPrecision} has it. */
    private static DecisionPower power(Plan plan) {
        int changes = plan.compare().against().size();
        return changes > 1 && plan.claim() == Claim.GAIN ? new PowerTogether(plan)
                : PlanPrecision.claim(plan, PlanSize.effect(plan), plan.errors().falseAlarm() / changes)::power;
    }

    /** The plan's own layout among the candidates; its counts of sessions are those of the compared levels, the fewest of those changed. */
    private static PlannedStudy planned(Plan plan, PlanSpace space) {
        PlanPrecision.Units sessions = PlanPrecision.Units.of(plan);
        int trials = plan.layout().trialsPerCondition();
        Candidate equal = Candidate.of(space, sessions.baseline(), sessions.fewest(), trials, StudyLimits.NONE);
        if (plan.compare().against().size() == 1 || !plan.comparesSessions()) {
            return equal.planned(equal.degrees() < 1 ? Double.NaN : power(plan).of(equal.standardErrorLog(), equal.degrees(),
                    PlanPrecision.loading(sessions.baseline(), sessions.fewest())));
        }
        int[] changed = changed(plan).stream().mapToInt(plan.layout().counts()::get).toArray();
        Price price = Price.of(space, sessions.baseline(), changed, trials, StudyLimits.NONE);
        PlanPrecision precision = new PlanPrecision(equal.standardErrorLog(), sessions.degreesOfFreedom(), sessions.loadings());
        return new PlannedStudy(sessions.baseline(), sessions.fewest(), trials, precision.degreesOfFreedom() < 1 ? Double.NaN
                : precision.power(plan).applyAsDouble(PlanSize.effect(plan)), precision.standardErrorLog(), sessions.degreesOfFreedom(), price.trials(),
                price.totalSeconds(), price.outdoorsSeconds(), price.outings(), price.weightedSeconds());
    }

    /** Sessions of the baseline and of each changed level of a study that was found; one number where levels share sessions. */
    public List<Integer> perLevel(PlannedStudy study) {
        List<Integer> all = new ArrayList<>(plan.comparesSessions() ? List.of(study.baselineSessions()) : List.of());
        all.addAll(Collections.nCopies(plan.comparesSessions() ? plan.compare().against().size() : 1, study.againstSessions()));
        return all;
    }

    /** The same of the plan's own layout. */
    public List<Integer> plannedPerLevel() {
        return plan.comparesSessions() ? PlanPrecision.Units.of(plan).perLevel() : perLevel(planned);
    }

    /** What the power of a study that was found means where several changes are judged together. */
    public Optional<Warning> together(PlannedStudy study) {
        return SeveralChanges.warning(plan.with(layout(study)), study.power());
    }

    /** The layout of a study that was found, to put into the plan. */
    public Layout layout(PlannedStudy study) {
        Map<String, Integer> counts = new LinkedHashMap<>(plan.layout().counts());
        if (plan.comparesSessions()) {
            counts.replaceAll((level, before) -> level.equals(plan.compare().baseline()) ? study.baselineSessions() : study.againstSessions());
        } else {
            shareOut(counts, study.againstSessions());
        }
        return new Layout(Layout.Kind.SESSIONS, counts, study.trialsPerCondition(), plan.layout().order());
    }

    /** Sessions that hold both levels are shared out over the levels of another per-session factor as evenly as can be. */
    private static void shareOut(Map<String, Integer> counts, int sessions) {
        int left = sessions;
        int levels = counts.size();
        for (Map.Entry<String, Integer> entry : counts.entrySet()) {
            int share = (left + levels - 1) / levels;
            entry.setValue(share);
            left -= share;
            levels--;
        }
    }

    /** Whether the order of an odd number of trials cannot be mirrored in full. */
    public boolean oddlyMirrored(PlannedStudy study) {
        return plan.layout().order() == Order.COUNTERBALANCED && study.trialsPerCondition() % 2 == 1 && (otherConditions(plan) > 1 || !plan.comparesSessions());
    }
}
