package coldproof.reason.verdict;

import coldproof.plan.Claim;
import coldproof.quantity.Interval;
import coldproof.reason.looks.LookPoint;
import coldproof.reason.looks.LookSchedule;
import coldproof.stats.distribution.StudentT;
import coldproof.stats.model.Estimate;
import coldproof.stats.sequential.SequentialBoundary;
import coldproof.stats.sequential.StagewiseInference;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.IntPredicate;
import java.util.random.RandomGenerator.SplittableGenerator;

/**
 * Judges a study whose plan has looks before its end. The verdict is that of the last look due, on the trials up to it: its intervals are repeated
 * intervals, at the error rate that is left to that look, so that they hold at all looks at once. Before the first look there is none.
 */
public final class LookedVerdicts {
    private final List<Question> questions;
    private final LookSchedule schedule;
    private final List<Observation> trials;
    private final RunOrders orders;
    private final SplittableGenerator chance;

    private LookedVerdicts(List<Question> questions, LookSchedule schedule, List<Observation> trials, RunOrders orders, SplittableGenerator chance) {
        this.questions = questions;
        this.schedule = schedule;
        this.trials = trials;
        this.orders = orders;
        this.chance = chance;
    }

    /**
     * Judges the changes at the last look that is due.
     *
     * @param questions alike but for the changed level; one or more
     * @param trials whose order is their place on the run sheet
     * @param settled whether the trial at a place of the run sheet was run or skipped
     */
    public static List<Compared> judge(List<Question> questions, LookSchedule schedule, List<Observation> trials, IntPredicate settled, RunOrders orders,
            SplittableGenerator chance) {
        LookedVerdicts verdicts = new LookedVerdicts(questions, schedule, trials, orders, chance);
        return schedule.reached(settled).map(verdicts::at).orElseGet(verdicts::tooEarly);
    }

    private List<Compared> tooEarly() {
        String reason = "the plan has its first look " + when(schedule.points().get(0)) + ", and nothing is decided before";
        LookReport report = new LookReport(schedule.points().size(), schedule.unitWord(), List.of(), capital("the first look is due "
                + when(schedule.points().get(0)) + "."), OptionalDouble.empty(), Optional.empty());
        return questions.stream().map(question -> new Compared(question, new Verdicts(question, trials, orders, chance).tooEarly(reason),
                OptionalDouble.empty(), "none").with(report)).toList();
    }

    private String when(LookPoint point) {
        int all = schedule.points().get(schedule.points().size() - 1).units();
        return "after " + schedule.unitWord() + " " + point.units() + " of " + all;
    }

    private static String capital(String sentence) {
        return Character.toUpperCase(sentence.charAt(0)) + sentence.substring(1);
    }

    /** The trials up to a look. */
    private List<Observation> until(LookPoint point) {
        boolean last = point.number() == schedule.points().size();
        return last ? trials : trials.stream().filter(trial -> trial.order() <= point.lastPosition()).toList();
    }

    private List<Compared> at(LookPoint now) {
        LookBounds bounds = new LookBounds(questions.get(0).falseAlarm(), chance);
        List<LookPoint> taken = new ArrayList<>();
        for (LookPoint point : schedule.points().subList(0, now.number())) {
            List<Observation> seen = until(point);
            Optional<Estimate> weakest = weakest(seen);
            boolean last = point.number() == schedule.points().size();
            double fraction = last ? 1 : schedule.observedFraction(seen.stream().map(Observation::level).toList(),
                    seen.stream().map(trial -> (int) trial.order()).toList());
            if (weakest.isPresent() && bounds.add(fraction, weakest.get().degreesOfFreedom())) {
                taken.add(point);
            }
        }
        if (taken.isEmpty() || taken.get(taken.size() - 1) != now) {
            return Comparisons.judge(questions, until(now), orders, chance); // its trials cannot carry a verdict, as the reason says
        }
        return judged(bounds, taken);
    }

    /** The test with fewest degrees of freedom; empty where a change cannot be judged. */
    private Optional<Estimate> weakest(List<Observation> seen) {
        List<Optional<Estimate>> all = questions.stream().map(question -> new Verdicts(question, seen, orders, chance).estimate()).toList();
        return all.stream().anyMatch(Optional::isEmpty) ? Optional.empty()
                : all.stream().map(Optional::get).min(Comparator.comparingDouble(Estimate::degreesOfFreedom));
    }

    private List<Compared> judged(LookBounds bounds, List<LookPoint> taken) {
        List<List<Compared>> byLook = new ArrayList<>();
        for (int k = 0; k < taken.size(); k++) {
            RunOrders test = k == taken.size() - 1 ? orders : RunOrders.untested();
            byLook.add(Comparisons.judge(questions, until(taken.get(k)), test, chance, bounds.rates(k)));
        }
        List<Compared> now = byLook.get(taken.size() - 1);
        List<Compared> reported = new ArrayList<>();
        for (int i = 0; i < now.size(); i++) {
            int change = i;
            List<Verdict> verdicts = byLook.stream().map(look -> look.get(change).verdict()).toList();
            reported.add(now.get(i).with(report(questions.get(i), bounds, taken, verdicts)));
        }
        return reported;
    }

    private LookReport report(Question question, LookBounds bounds, List<LookPoint> taken, List<Verdict> verdicts) {
        List<LookReport.Look> looks = new ArrayList<>();
        double[] p = new double[taken.size()];
        for (int k = 0; k < p.length; k++) {
            Verdict.Change change = verdicts.get(k).estimate().orElseThrow();
            p[k] = questions.size() == 1 ? bounds.nominalP(k) : share(verdicts.get(k));
            looks.add(new LookReport.Look(taken.get(k).number(), taken.get(k).units(), bounds.fraction(k), change.t(),
                    StudentT.upperPoint(p[k] / 2, change.degreesOfFreedom()), p[k], bounds.spent(k), verdicts.get(k).word()));
        }
        int last = taken.size() - 1;
        boolean over = taken.get(last).number() == schedule.points().size();
        boolean decidedBefore = looks.subList(0, last).stream().anyMatch(LookReport.Look::decides);
        boolean stopsNow = !decidedBefore && (over || looks.get(last).decides());
        Estimate estimate = estimate(verdicts.get(last));
        Optional<LookReport.Adjusted> adjusted = questions.size() > 1 ? ofSeveral(bounds, p, looks, verdicts, over)
                : stopsNow ? Optional.of(adjusted(bounds.boundary(), estimate)) : Optional.empty();
        OptionalDouble chanceLeft = over || stopsNow || decidedBefore || question.claim() != Claim.GAIN ? OptionalDouble.empty()
                : OptionalDouble.of(bounds.chance(estimate, question.margin(), schedule.points().subList(taken.get(last).number(), schedule.points().size())));
        return new LookReport(schedule.points().size(), schedule.unitWord(), looks, next(taken.get(last)), chanceLeft, adjusted);
    }

    private String next(LookPoint now) {
        return now.number() == schedule.points().size() ? ""
                : capital("the next look is due " + when(schedule.points().get(now.number())) + "; until then the verdict stays as it is.");
    }

    private static Estimate estimate(Verdict verdict) {
        Verdict.Change change = verdict.estimate().orElseThrow();
        return Estimate.of(change.log(), change.standardError(), change.degreesOfFreedom());
    }

    /** The two-sided p at which one of several changes is judged: that of the interval it got. */
    private static double share(Verdict verdict) {
        Verdict.Change change = verdict.estimate().orElseThrow();
        double reach = (verdict.interval().orElseThrow().high() - change.log()) / change.standardError();
        return 2 * StudentT.survival(reach, change.degreesOfFreedom());
    }

    /** The study goes on for the other changes, so one is adjusted for its own looks up to the one that decided it. */
    private Optional<LookReport.Adjusted> ofSeveral(LookBounds bounds, double[] p, List<LookReport.Look> looks, List<Verdict> verdicts, boolean over) {
        for (int k = 0; k < p.length; k++) {
            if (looks.get(k).decides() || over && k == p.length - 1) {
                return Optional.of(adjusted(bounds.boundary(Arrays.copyOf(p, k + 1)), estimate(verdicts.get(k))));
            }
        }
        return Optional.empty();
    }

    private LookReport.Adjusted adjusted(SequentialBoundary boundary, Estimate estimate) {
        int changes = questions.size();
        double falseAlarm = questions.get(0).falseAlarm();
        StagewiseInference found = StagewiseInference.of(boundary, estimate, 1 - falseAlarm / changes);
        Interval interval = new Interval(1 - falseAlarm, found.interval().low(), found.interval().high());
        return new LookReport.Adjusted(found.median(), Math.min(1, changes * found.p()), interval, changes);
    }
}
