package coldproof.reason.sizing;

import coldproof.plan.Budget;
import coldproof.plan.Claim;
import coldproof.plan.Layout;
import coldproof.plan.NoiseAssumption;
import coldproof.plan.Plan;
import coldproof.plan.RunSheet;
import coldproof.quantity.Interval;
import coldproof.quantity.LogRatio;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import coldproof.reason.sizing.PilotAdvice.Pilot;
import coldproof.stats.Tail;
import coldproof.stats.interval.ConfidenceInterval;
import coldproof.stats.model.NoiseComponents;
import coldproof.stats.model.VarianceEstimate;
import coldproof.stats.power.Assurance;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Weighs pilots against the studies they make possible. */
public final class PilotSearch {
    private static final int[] SESSIONS = {2, 3, 4, 5, 6, 8, 10};
    private static final int[] TRIALS_IN_SESSIONS = {2, 3, 4, 6};
    private static final int[] TRIALS_IN_ONE = {3, 4, 6, 8, 10, 12, 16, 20, 30};
    private static final double INTERVAL = 0.8;
    private static final int MOST_UNITS = 200;
    private final Plan plan;
    private final NoiseAssumption noise;
    private final boolean bySessions;
    private final int trialsPerUnit;
    private final int baseline;
    private final int against;
    private final coldproof.stats.power.Claim claim;

    private PilotSearch(Plan plan, RunSheet sheet) {
        this.plan = plan;
        noise = plan.noise().filter(known -> known.runCvPercent() > 0).orElseThrow(() -> new Refused(Problem.of(
                "the plan says nothing about run-to-run noise, so no pilot can be weighed", Place.named("noise"), "noise: {run to run: 1.2 %, from: guess}",
                "Write down a guess: the pilot is there to replace it.")));
        bySessions = plan.layout().kind() == Layout.Kind.SESSIONS && plan.comparesSessions();
        String factor = plan.compare().factor();
        int perSession = Math.max(1, sheet.ofSession(1).size());
        trialsPerUnit = bySessions ? perSession : 1;
        baseline = (int) sheet.positions().stream().filter(one -> one.levels().get(factor).equals(plan.compare().baseline())).count() / trialsPerUnit;
        against = (int) sheet.positions().stream().filter(one -> one.levels().get(factor).equals(plan.compare().against().get(0))).count() / trialsPerUnit;
        double margin = Math.log1p(plan.mattersPercent() / 100);
        claim = plan.claim() == Claim.GAIN ? new coldproof.stats.power.Claim.Difference(margin, plan.errors().falseAlarm(), Tail.TWO)
                : coldproof.stats.power.Claim.Equivalence.within(margin, 0, plan.errors().falseAlarm());
    }

    /**
     * Weighs pilots for a plan.
     *
     * @throws Refused if the plan says nothing about noise
     */
    public static PilotAdvice of(Plan plan, RunSheet sheet) {
        return new PilotSearch(plan, sheet).advice();
    }

    private PilotAdvice advice() {
        List<Pilot> pilots = new ArrayList<>();
        for (int sessions : bySessions ? SESSIONS : new int[] {1}) {
            for (int trials : bySessions ? TRIALS_IN_SESSIONS : TRIALS_IN_ONE) {
                pilots.add(pilot(sessions, trials));
            }
        }
        Optional<Pilot> best = pilots.stream().filter(pilot -> pilot.needed().isPresent())
                .min(Comparator.comparingDouble((Pilot pilot) -> price(pilot)).thenComparingDouble(pilot -> -pilot.degreesOfFreedom()));
        Optional<VarianceEstimate> now = known();
        return new PilotAdvice(plan, power(baseline, against), now.map(known -> OptionalDouble.of(assurance(known, baseline, against))).orElse(OptionalDouble.empty()),
                now.map(known -> OptionalDouble.of(known.degreesOfFreedom())).orElse(OptionalDouble.empty()), pilots, best);
    }

    /** Minutes in all where times are known, else trials in all. */
    private double price(Pilot pilot) {
        int units = pilot.needed().orElseThrow().stream().mapToInt(Integer::intValue).sum();
        return Double.isNaN(pilot.minutesInAll()) ? pilot.sessions() * pilot.trials() + units * trialsPerUnit : pilot.minutesInAll();
    }

    private Pilot pilot(int sessions, int trials) {
        VarianceEstimate learnt = learnt(sessions, trials);
        Optional<List<Integer>> needed = needed(learnt);
        double minutes = minutes(sessions, trials);
        ConfidenceInterval interval = learnt.logSdInterval(INTERVAL);
        double sd = learnt.logSd();
        return new Pilot(sessions, trials, learnt.degreesOfFreedom(), new Interval(INTERVAL, interval.low() / sd, interval.high() / sd), minutes,
                assurance(learnt, baseline, against), needed, needed.map(units -> minutes + studyMinutes(units)).orElse(Double.NaN));
    }

    private double runVariance() {
        return square(LogRatio.logSdOfCv(noise.runCvPercent()));
    }

    private double sessionVariance() {
        return square(LogRatio.logSdOfCv(noise.sessionCvPercent()));
    }

    /** What a pilot would know of the noise of a unit, if it came out as the plan assumes. */
    private VarianceEstimate learnt(int sessions, int trials) {
        if (!bySessions) {
            return new VarianceEstimate(runVariance(), sessions * (trials - 1));
        }
        return ofUnit(new NoiseComponents(runVariance(), sessions * (trials - 1), runVariance() + trials * sessionVariance(), sessions - 1, trials));
    }

    /** Of one degree of freedom at least: mean squares that nearly cancel leave less, but no test has less. */
    private VarianceEstimate ofUnit(NoiseComponents components) {
        VarianceEstimate one = components.ofSessionMean(trialsPerUnit);
        return new VarianceEstimate(one.variance(), Math.max(1, one.degreesOfFreedom()));
    }

    private Optional<VarianceEstimate> known() {
        if (!bySessions) {
            return noise.runDf().isPresent() ? Optional.of(new VarianceEstimate(runVariance(), noise.runDf().getAsDouble())) : Optional.empty();
        }
        if (noise.runDf().isEmpty() || noise.sessionDf().isEmpty() || noise.runDf().getAsDouble() < 1 || noise.sessionDf().getAsDouble() < 1) {
            return Optional.empty();
        }
        double trials = 1 + noise.runDf().getAsDouble() / (noise.sessionDf().getAsDouble() + 1); // a pilot of one condition: s(r - 1) and s - 1
        return Optional.of(ofUnit(new NoiseComponents(runVariance(), (int) noise.runDf().getAsDouble(), runVariance() + trials * sessionVariance(),
                (int) noise.sessionDf().getAsDouble(), trials)));
    }

    private double errorPerSd(int ofBaseline, int ofAgainst) {
        return plan.layout().kind() == Layout.Kind.PAIRED ? Math.sqrt(2.0 / ofAgainst) : Math.sqrt(1.0 / ofBaseline + 1.0 / ofAgainst);
    }

    private double degrees(int ofBaseline, int ofAgainst) {
        return switch (plan.layout().kind()) {
            case PAIRED -> ofAgainst - 1;
            case ALTERNATING -> ofBaseline + ofAgainst - 2;
            case SESSIONS -> bySessions ? ofBaseline + ofAgainst - 2 : ofBaseline + ofAgainst - plan.layout().total() - 1;
        };
    }

    private double assurance(VarianceEstimate known, int ofBaseline, int ofAgainst) {
        double degrees = degrees(ofBaseline, ofAgainst);
        return degrees < 1 ? 0 : Assurance.of(claim, new Assurance.Estimate(known.logSd(), known.degreesOfFreedom()), errorPerSd(ofBaseline, ofAgainst), degrees);
    }

    private double power(int ofBaseline, int ofAgainst) {
        double degrees = degrees(ofBaseline, ofAgainst);
        double sd = Math.sqrt(bySessions ? sessionVariance() + runVariance() / trialsPerUnit : runVariance());
        return degrees < 1 ? Double.NaN : claim.power(sd * errorPerSd(ofBaseline, ofAgainst), degrees);
    }

    /** The smallest study of the plan's proportions with the wanted assurance, by halving: assurance grows with the size. */
    private Optional<List<Integer>> needed(VarianceEstimate known) {
        int low = 1;
        int high = MOST_UNITS;
        if (assurance(known, ofBaseline(high), high) < plan.errors().power()) {
            return Optional.empty();
        }
        while (low < high) {
            int middle = (low + high) / 2;
            if (assurance(known, ofBaseline(middle), middle) >= plan.errors().power()) {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        return Optional.of(List.of(ofBaseline(high), high));
    }

    private int ofBaseline(int ofAgainst) {
        return Math.max(bySessions ? 2 : 1, (int) Math.round((double) ofAgainst * baseline / against));
    }

    private double minutes(int sessions, int trials) {
        Budget budget = plan.budget();
        return budget.trialSeconds().isEmpty() ? Double.NaN
                : sessions * (budget.openingSeconds(plan.compare().baseline()) + trials * budget.trialSeconds().getAsDouble()) / 60;
    }

    private double studyMinutes(List<Integer> units) {
        Budget budget = plan.budget();
        if (budget.trialSeconds().isEmpty()) {
            return Double.NaN;
        }
        double trial = budget.trialSeconds().getAsDouble();
        if (!bySessions) {
            return (units.get(0) + units.get(1)) * trial / 60;
        }
        return (units.get(0) * (budget.openingSeconds(plan.compare().baseline()) + trialsPerUnit * trial)
                + units.get(1) * (budget.openingSeconds(plan.compare().against().get(0)) + trialsPerUnit * trial)) / 60;
    }

    private static double square(double value) {
        return value * value;
    }
}
