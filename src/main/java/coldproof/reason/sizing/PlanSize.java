package coldproof.reason.sizing;

import coldproof.plan.Change;
import coldproof.plan.Claim;
import coldproof.plan.Factor;
import coldproof.plan.Layout;
import coldproof.plan.Level;
import coldproof.plan.NoiseAssumption;
import coldproof.plan.Plan;
import coldproof.plan.Position;
import coldproof.plan.RunSheet;
import coldproof.reason.looks.LookCost;
import coldproof.reason.looks.LookSchedule;
import coldproof.reason.orders.DrawnOrders;
import coldproof.stats.Tail;
import coldproof.stats.power.DetectableEffect;
import coldproof.stats.randomisation.RandomisationScheme;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.SplittableRandom;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** What a plan can see, how long it takes, and what its wanted power would take. */
public final class PlanSize {
    private static final double POWER = 0.9;
    private static final Pattern BARE_NUMBER = Pattern.compile("[-+\u2212]?\\d+([.,]\\d+)?");

    private PlanSize() {}

    /** Judges a plan with its run sheet. */
    public static SizingAnswer of(Plan plan, RunSheet sheet) {
        if (plan.looks() == 1) {
            return judgedOnce(plan, sheet);
        }
        LookSchedule schedule = LookSchedule.of(plan, sheet);
        SizingAnswer once = judgedOnce(plan, sheet);
        if (!schedule.looksEarly()) {
            return once.warning(new Warning("looks-left-out", "The plan asks for " + plan.looks()
                    + " looks, but no trials short of the last ones could carry a verdict: it is judged once, at the end."));
        }
        double power = once.size().map(Size::power).orElse(Double.NaN);
        double errorRate = plan.noise().flatMap(noise -> PlanPrecision.of(plan, sheet, noise)).map(precision -> precision.errorRate(plan))
                .orElse(plan.errors().falseAlarm() / plan.compare().against().size());
        return once.with(LookCost.of(schedule, errorRate, plan.errors().power(), power, new SplittableRandom(plan.seed())));
    }

    private static SizingAnswer judgedOnce(Plan plan, RunSheet sheet) {
        StudyMinutes minutes = minutes(plan, sheet);
        List<Warning> warnings = new ArrayList<>();
        unitWarning(plan).ifPresent(warnings::add);
        RandomisationScheme orders = DrawnOrders.of(plan);
        Sizing.randomisationWarning(orders, plan.errors().falseAlarm()).ifPresent(warnings::add);
        if (plan.budget().outdoorsAtMostSeconds().isPresent() && minutes.outdoors().isPresent()
                && minutes.outdoors().getAsDouble() > plan.budget().outdoorsAtMostSeconds().getAsDouble() / 60 + 1e-9) {
            warnings.add(new Warning("outdoors-over-budget", "The plan takes " + Math.round(minutes.outdoors().getAsDouble()) + " min outdoors, the budget is "
                    + Math.round(plan.budget().outdoorsAtMostSeconds().getAsDouble() / 60) + " min."));
        }
        if (plan.noise().isEmpty()) {
            warnings.add(new Warning("noise-unknown", "The plan says nothing about noise, so its power is not known: run a pilot, then coldproof noise."));
            return new SizingAnswer(Optional.empty(), Optional.empty(), minutes, warnings, plan.mattersPercent(), plan.errors().power());
        }
        Size size = sizeOf(plan, sheet, orders);
        Optional<Size> needed = needed(plan, size);
        if (size.power() < plan.errors().power() - 1e-9) {
            warnings.add(new Warning("power-below-wanted", "As laid out, a change of " + plan.mattersPercent() + " % is found "
                    + Math.round(100 * size.power()) + " times in 100; wanted are " + Math.round(100 * plan.errors().power()) + "."
                    + needed.map(n -> " That would take " + n.perLevel().stream().map(String::valueOf).collect(Collectors.joining(" + ")) + ".").orElse("")));
        }
        size.warnings().stream().filter(warning -> warnings.stream().noneMatch(w -> w.code().equals(warning.code()))).forEach(warnings::add);
        return new SizingAnswer(Optional.of(size), needed, minutes, warnings, plan.mattersPercent(), plan.errors().power());
    }

    /** Where the air is written as a bare number, it is a word like any other, and no rule of safety sees how cold it is. */
    private static Optional<Warning> unitWarning(Plan plan) {
        for (Factor factor : plan.factors()) {
            for (Level level : factor.levels()) {
                if (factor.change() == Change.PER_SESSION && BARE_NUMBER.matcher(level.setting()).matches()) {
                    return Optional.of(new Warning("setting-without-unit", "The setting " + level.setting() + " of " + factor.name() + " " + level.name()
                            + " has no unit, so it counts as a word. If it is the air, write " + level.setting()
                            + " °C: else its cold is left out of every caution."));
                }
            }
        }
        return Optional.empty();
    }

    private static Size sizeOf(Plan plan, RunSheet sheet, RandomisationScheme orders) {
        NoiseAssumption noise = plan.noise().orElseThrow();
        if (plan.layout().kind() == Layout.Kind.SESSIONS && !plan.comparesSessions()) {
            return ofPrecision(plan, sheet, orders, List.of(sheet.sessions()), List.of());
        }
        int baseline = plan.layout().counts().getOrDefault(plan.compare().baseline(), plan.layout().total());
        int against = plan.layout().counts().getOrDefault(plan.compare().against().get(0), plan.layout().total());
        SizingQuestion question = question(plan, noise, trialsPerSession(sheet), OptionalInt.of(baseline), (double) against / baseline);
        Size size = Sizing.solve(question);
        List<Warning> others = size.warnings().stream().filter(w -> !w.code().equals("power-below-wanted") && !w.code().equals("randomisation-cannot-reach")).toList();
        if (plan.compare().against().size() > 1) {
            return ofPrecision(plan, sheet, orders, PlanPrecision.Units.of(plan).perLevel(), others);
        }
        return new Size(size.layout(), size.claim(), size.logEffect(), size.perLevel(), sheet.positions().size(), size.degreesOfFreedom(), size.power(),
                size.powerOneFewer(), size.smallestDetectableLog(), size.smallestMarginLog(), orders.smallestP(), others);
    }

    private static SizingQuestion question(Plan plan, NoiseAssumption noise, int trialsPerSession, OptionalInt perLevel, double ratio) {
        double effect = plan.claim() == Claim.GAIN ? plan.mattersPercent() : 0;
        return new SizingQuestion(plan.layout().kind(), plan.claim(), effect, noise.runCvPercent(), noise.sessionCvPercent(), trialsPerSession,
                plan.errors().power(), plan.errors().falseAlarm(), Tail.TWO, plan.mattersPercent(), ratio, perLevel);
    }

    private static int trialsPerSession(RunSheet sheet) {
        return Math.max(1, sheet.ofSession(1).size());
    }

    /** A per-trial factor in several sessions, or several changes. */
    private static Size ofPrecision(Plan plan, RunSheet sheet, RandomisationScheme orders, List<Integer> perLevel, List<Warning> others) {
        Optional<PlanPrecision> precision = PlanPrecision.of(plan, sheet, plan.noise().orElseThrow());
        double effect = effect(plan);
        OptionalDouble detectable = precision.isPresent() && plan.claim() == Claim.GAIN
                ? OptionalDouble.of(precision.get().standardErrorLog() * DetectableEffect.noncentrality(precision.get().degreesOfFreedom(),
                        precision.get().errorRate(plan), Tail.TWO, plan.errors().power()))
                : OptionalDouble.empty();
        double power = precision.map(found -> found.power(plan).applyAsDouble(effect)).orElse(Double.NaN);
        List<Warning> warnings = new ArrayList<>(others);
        SeveralChanges.warning(plan, power).ifPresent(warnings::add);
        return new Size(plan.layout().kind(), plan.claim(), effect, perLevel, sheet.positions().size(),
                precision.map(PlanPrecision::degreesOfFreedom).orElse(0.0), power, OptionalDouble.empty(), detectable, OptionalDouble.empty(),
                orders.smallestP(), warnings);
    }

    static double effect(Plan plan) {
        return plan.claim() == Claim.GAIN ? Math.log1p(plan.mattersPercent() / 100) : 0;
    }

    private static Optional<Size> needed(Plan plan, Size size) {
        boolean within = plan.layout().kind() == Layout.Kind.SESSIONS && !plan.comparesSessions();
        if (within || size.power() >= plan.errors().power()) {
            return Optional.empty();
        }
        int trials = (int) Math.max(1, plan.layout().kind() == Layout.Kind.SESSIONS ? size.trialsTotal() / plan.layout().total() : 1);
        if (plan.compare().against().size() > 1) {
            return SeveralChanges.needed(plan, trials, size);
        }
        double ratio = size.perLevel().size() == 2 ? (double) size.perLevel().get(1) / size.perLevel().get(0) : 1;
        return Optional.of(Sizing.solve(question(plan, plan.noise().orElseThrow(), trials, OptionalInt.empty(), ratio)));
    }

    /** Units of each level for a new plan: as many as its noise asks for, a usual number where nothing is known. */
    public static int perLevelFor(Layout.Kind kind, Change change, Claim claim, double mattersPercent, Optional<NoiseAssumption> noise, int trialsPerSession) {
        if (noise.isEmpty() || !(noise.get().runCvPercent() > 0) || kind == Layout.Kind.SESSIONS && change == Change.PER_TRIAL) {
            return kind == Layout.Kind.SESSIONS ? 4 : 8;
        }
        double effect = claim == Claim.GAIN ? mattersPercent : 0;
        SizingQuestion question = new SizingQuestion(kind, claim, effect, noise.get().runCvPercent(), noise.get().sessionCvPercent(), trialsPerSession, POWER, 0.05,
                Tail.TWO, mattersPercent, 1, OptionalInt.empty());
        return Sizing.solve(question).perLevel().get(0);
    }

    private static StudyMinutes minutes(Plan plan, RunSheet sheet) {
        if (plan.budget().trialSeconds().isEmpty()) {
            return new StudyMinutes(OptionalDouble.empty(), OptionalDouble.empty());
        }
        double trial = plan.budget().trialSeconds().getAsDouble();
        String factor = plan.sessionFactor().map(f -> f.name()).orElse("");
        double total = 0;
        double outdoors = 0;
        for (int session = 1; session <= sheet.sessions(); session++) {
            List<Position> positions = sheet.ofSession(session);
            String level = positions.get(0).levels().getOrDefault(factor, "");
            double seconds = plan.budget().openingSeconds(level) + trial * positions.size();
            total += seconds;
            outdoors += plan.budget().outdoors().contains(level) ? seconds : 0;
        }
        return new StudyMinutes(OptionalDouble.of(total / 60), OptionalDouble.of(outdoors / 60));
    }
}
