package coldproof.reason.sizing;

import coldproof.plan.Claim;
import coldproof.plan.Layout.Kind;
import coldproof.plan.NoiseAssumption;
import coldproof.plan.Plan;
import coldproof.plan.Position;
import coldproof.plan.RunSheet;
import coldproof.quantity.LogRatio;
import coldproof.stats.Tail;
import coldproof.stats.power.Allocation;
import coldproof.stats.power.Layout;
import java.util.Optional;

/**
 * How sharply a plan as laid out sees its first change.
 *
 * @param standardErrorLog true standard error of the log change, above 0
 * @param degreesOfFreedom of the estimated one, 1 or more
 */
public record PlanPrecision(double standardErrorLog, double degreesOfFreedom) {
    /** The precision of a plan at this noise; empty where nothing is left to judge the noise by, or there is no noise. */
    public static Optional<PlanPrecision> of(Plan plan, RunSheet sheet, NoiseAssumption noise) {
        PlanPrecision precision = plan.layout().kind() == Kind.SESSIONS && !plan.comparesSessions() ? withinSessions(plan, sheet, noise)
                : ofUnits(plan, sheet, noise);
        return precision.standardErrorLog > 0 && precision.degreesOfFreedom >= 1 ? Optional.of(precision) : Optional.empty();
    }

    private static PlanPrecision ofUnits(Plan plan, RunSheet sheet, NoiseAssumption noise) {
        double run = LogRatio.logSdOfCv(noise.runCvPercent());
        double session = LogRatio.logSdOfCv(noise.sessionCvPercent());
        if (!(run + (plan.layout().kind() == Kind.SESSIONS ? session : 0) > 0)) {
            return new PlanPrecision(0, 0);
        }
        int baseline = plan.layout().counts().getOrDefault(plan.compare().baseline(), plan.layout().total());
        int against = plan.layout().counts().getOrDefault(plan.compare().against().get(0), plan.layout().total());
        Layout layout = switch (plan.layout().kind()) {
            case ALTERNATING -> new Layout.TwoGroups(run);
            case PAIRED -> new Layout.Pairs(Math.sqrt(2) * run);
            case SESSIONS -> new Layout.Sessions(session, run, Math.max(1, sheet.ofSession(1).size()));
        };
        Allocation allocation = new Allocation(baseline, against);
        return new PlanPrecision(layout.standardError(allocation), layout.degreesOfFreedom(allocation));
    }

    /** A per-trial factor in several sessions: run noise only, sessions cost degrees of freedom. */
    private static PlanPrecision withinSessions(Plan plan, RunSheet sheet, NoiseAssumption noise) {
        String factor = plan.compare().factor();
        long baseline = count(sheet, factor, plan.compare().baseline());
        long against = count(sheet, factor, plan.compare().against().get(0));
        double error = LogRatio.logSdOfCv(noise.runCvPercent()) * Math.sqrt(1.0 / baseline + 1.0 / against);
        long conditions = sheet.positions().stream().map(Position::levels).distinct().count();
        long levels = plan.comparedFactor().levels().size();
        return new PlanPrecision(error, baseline + against - sheet.sessions() - Math.max(1, conditions / levels));
    }

    private static long count(RunSheet sheet, String factor, String level) {
        return sheet.positions().stream().filter(position -> position.levels().get(factor).equals(level)).count();
    }

    /** Probability that the claim of the plan is decided for, if the true log change is this, judged once at the end. */
    public double power(Plan plan, double logEffect) {
        double falseAlarm = plan.errors().falseAlarm();
        coldproof.stats.power.Claim claim = plan.claim() == Claim.GAIN ? new coldproof.stats.power.Claim.Difference(logEffect, falseAlarm, Tail.TWO)
                : coldproof.stats.power.Claim.Equivalence.within(Math.log1p(plan.mattersPercent() / 100), logEffect, falseAlarm);
        return claim.power(standardErrorLog, degreesOfFreedom);
    }
}
