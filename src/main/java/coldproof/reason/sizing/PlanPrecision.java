package coldproof.reason.sizing;

import coldproof.plan.Claim;
import coldproof.plan.Layout.Kind;
import coldproof.plan.NoiseAssumption;
import coldproof.plan.Plan;
import coldproof.plan.RunSheet;
import coldproof.quantity.LogRatio;
import coldproof.reason.looks.PlannedEffects;
import coldproof.stats.Tail;
import coldproof.stats.distribution.MultivariateT;
import coldproof.stats.distribution.StudentT;
import coldproof.stats.power.Allocation;
import coldproof.stats.power.Layout;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;

/**
 * How sharply a plan as laid out sees its changes; where it has several, the one with the fewest units. They are judged together, as the
 * verdict judges them: by Dunnett's distribution from one estimate of the noise; for sameness, each at an equal share of the error rate.
 *
 * @param standardErrorLog true standard error of the log change, above 0
 * @param degreesOfFreedom of the estimated one, 1 or more
 * @param loadings {@code sqrt(n / (n + baseline))} of each change, which make their correlations
 */
public record PlanPrecision(double standardErrorLog, double degreesOfFreedom, List<Double> loadings) {
    private static final PlanPrecision NONE = new PlanPrecision(0, 0, List.of());

    /** Copies. */
    public PlanPrecision {
        loadings = List.copyOf(loadings);
    }

    /** The precision of a plan at this noise; empty where nothing is left to judge the noise by, or there is no noise. */
    public static Optional<PlanPrecision> of(Plan plan, RunSheet sheet, NoiseAssumption noise) {
        PlanPrecision precision = plan.layout().kind() == Kind.SESSIONS && !plan.comparesSessions() ? withinSessions(plan, sheet, noise)
                : ofUnits(plan, sheet, noise);
        return precision.standardErrorLog > 0 && precision.degreesOfFreedom >= 1 ? Optional.of(precision) : Optional.empty();
    }

    private static PlanPrecision ofUnits(Plan plan, RunSheet sheet, NoiseAssumption noise) {
        Units units = Units.of(plan);
        return ofUnits(plan, units, Math.max(1, sheet.ofSession(1).size()), noise);
    }

    /**
     * Units of each level.
     *
     * @param baseline of the baseline
     * @param against of each changed level
     */
    record Units(int baseline, List<Integer> against) {
        /** As the plan lays them out. */
        static Units of(Plan plan) {
            return new Units(plan.layout().counts().getOrDefault(plan.compare().baseline(), plan.layout().total()), plan.compare().against().stream()
                    .map(level -> plan.layout().counts().getOrDefault(level, plan.layout().total())).toList());
        }

        /** In the same proportions, with another number of the baseline. */
        Units scaledTo(int other) {
            return new Units(other, against.stream().map(units -> (int) Math.max(1, Math.rint((double) other * units / baseline))).toList());
        }

        int fewest() {
            return against.stream().mapToInt(Integer::intValue).min().orElseThrow();
        }

        /** Of the one estimate of the noise by which all are judged. */
        int degreesOfFreedom() {
            return total() - against.size() - 1;
        }

        int total() {
            return baseline + against.stream().mapToInt(Integer::intValue).sum();
        }

        /** Of the baseline first. */
        List<Integer> perLevel() {
            List<Integer> all = new ArrayList<>(List.of(baseline));
            all.addAll(against);
            return all;
        }

        List<Double> loadings() {
            return against.stream().map(units -> loading(baseline, units)).toList();
        }
    }

    /** What ties a change to the others: its correlation with another is the product of their loadings. */
    static double loading(int baselineUnits, int againstUnits) {
        return Math.sqrt(againstUnits / (double) (againstUnits + baselineUnits));
    }

    static PlanPrecision ofUnits(Plan plan, Units units, int trialsPerSession, NoiseAssumption noise) {
        double run = LogRatio.logSdOfCv(noise.runCvPercent());
        double session = LogRatio.logSdOfCv(noise.sessionCvPercent());
        if (!(run + (plan.layout().kind() == Kind.SESSIONS ? session : 0) > 0)) {
            return NONE;
        }
        Layout layout = switch (plan.layout().kind()) {
            case ALTERNATING -> new Layout.TwoGroups(run);
            case PAIRED -> new Layout.Pairs(Math.sqrt(2) * run);
            case SESSIONS -> new Layout.Sessions(session, run, trialsPerSession);
        };
        Allocation weakest = new Allocation(units.baseline(), units.fewest());
        double degreesOfFreedom = layout.isPaired() ? layout.degreesOfFreedom(weakest) : units.degreesOfFreedom();
        return new PlanPrecision(layout.standardError(weakest), degreesOfFreedom, units.loadings());
    }

    /** A per-trial factor in several sessions: run noise only, sessions cost degrees of freedom. */
    private static PlanPrecision withinSessions(Plan plan, RunSheet sheet, NoiseAssumption noise) {
        String factor = plan.compare().factor();
        Units units = new Units(count(sheet, factor, plan.compare().baseline()),
                plan.compare().against().stream().map(level -> count(sheet, factor, level)).toList());
        double error = LogRatio.logSdOfCv(noise.runCvPercent()) * Math.sqrt(1.0 / units.baseline() + 1.0 / units.fewest());
        int left = units.total() - sheet.sessions();
        return new PlanPrecision(error, left - PlannedEffects.withinSessions(plan, units.against().size() + 1, left), units.loadings());
    }

    private static int count(RunSheet sheet, String factor, String level) {
        return (int) sheet.positions().stream().filter(position -> position.levels().get(factor).equals(level)).count();
    }

    /** Error rate at which each change is judged, so that all of them together keep that of the plan. */
    public double errorRate(Plan plan) {
        double all = plan.errors().falseAlarm();
        if (loadings.size() == 1) {
            return all;
        }
        if (plan.claim() == Claim.SAME) {
            return all / loadings.size();
        }
        double[] each = loadings.stream().mapToDouble(Double::doubleValue).toArray();
        return 2 * StudentT.survival(MultivariateT.oneFactor(each, degreesOfFreedom).bound(all, Tail.TWO), degreesOfFreedom);
    }

    /** Probability, by true log change, that the claim of the plan is decided for as to one change, judged once at the end. */
    public DoubleUnaryOperator power(Plan plan) {
        double falseAlarm = errorRate(plan);
        return logEffect -> claim(plan, logEffect, falseAlarm).power(standardErrorLog, degreesOfFreedom);
    }

    /** The claim of a plan as to one change of this true size, judged at this error rate. */
    static coldproof.stats.power.Claim claim(Plan plan, double logEffect, double errorRate) {
        return plan.claim() == Claim.GAIN ? new coldproof.stats.power.Claim.Difference(logEffect, errorRate, Tail.TWO)
                : coldproof.stats.power.Claim.Equivalence.within(Math.log1p(plan.mattersPercent() / 100), logEffect, errorRate);
    }
}
