package coldproof.reason.rehearse;

import coldproof.plan.Factor;
import coldproof.plan.Plan;
import coldproof.plan.Position;
import coldproof.plan.RunSheet;
import coldproof.quantity.ConstantWord;
import coldproof.reason.limiter.KnownLimits;
import coldproof.reason.limiter.Limiter;
import coldproof.reason.limiter.LimiterAnswer;
import coldproof.reason.limiter.LimiterTrial;
import coldproof.reason.limiter.Limiters;
import coldproof.reason.rehearse.bench.Bench;
import coldproof.reason.rehearse.bench.BenchCondition;
import coldproof.reason.rehearse.bench.BenchParameters;
import coldproof.reason.rehearse.bench.BenchSession;
import coldproof.reason.rehearse.bench.BenchStudy;
import coldproof.reason.rehearse.bench.BenchTrial;
import coldproof.reason.rehearse.bench.DrawnDevices;
import coldproof.reason.rehearse.bench.HeldBy;
import coldproof.reason.rehearse.bench.InventedDevices;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;

/**
 * Runs the whole plan with full telemetry on invented devices, each drawn anew, and asks for the limiter under every condition. What truly
 * held the device is known to the simulator alone.
 */
public final class LimiterRehearsal {
    private static final double COUNTS = 0.2; // share of the last half from which a holder is a true answer: the others then have 80 % at most

    private final Plan plan;
    private final RunSheet sheet;

    private LimiterRehearsal(Plan plan, RunSheet sheet) {
        this.plan = plan;
        this.sheet = sheet;
    }

    /** What one study showed. */
    private record Seen(Limiter truth, Limiter named, boolean right, String sentence) {}

    /**
     * Rehearses the naming.
     *
     * @param settings how many studies, shared out over the invented devices; from which seed
     * @param workers who does the work; the result does not depend on them
     */
    public static LimiterReport of(Plan plan, RunSheet sheet, RehearsalSettings settings, Workers workers) {
        LimiterRehearsal rehearsal = new LimiterRehearsal(plan, sheet);
        List<List<Seen>> seen = new ArrayList<>(Collections.nCopies(settings.studies(), List.of()));
        workers.all(settings.studies(), study -> seen.set(study, rehearsal.study(study, settings.stream(study))));
        return report(settings.studies(), seen);
    }

    private static LimiterReport report(int studies, List<List<Seen>> all) {
        Map<Limiter, Map<Limiter, Integer>> rows = new EnumMap<>(Limiter.class);
        List<String> wrong = new ArrayList<>();
        int rightWhereMixed = 0;
        for (List<Seen> study : all) {
            for (Seen seen : study) {
                rows.computeIfAbsent(seen.truth(), truth -> new EnumMap<>(Limiter.class)).merge(seen.named(), 1, Integer::sum);
                if (!seen.right()) {
                    wrong.add(seen.sentence());
                }
                rightWhereMixed += seen.right() && seen.truth() == Limiter.MIXED && seen.named() != Limiter.MIXED && seen.named() != Limiter.UNCLEAR ? 1 : 0;
            }
        }
        return new LimiterReport(studies, rows, rightWhereMixed, wrong);
    }

    private List<Seen> study(int number, SplittableRandom random) {
        List<BenchParameters> kinds = InventedDevices.all();
        BenchParameters device = DrawnDevices.like(kinds.get(number % kinds.size()), random);
        BenchStudy bench = Bench.of(device).study(random.split());
        List<LimiterTrial> trials = new ArrayList<>();
        Map<Map<String, String>, double[]> soaked = new LinkedHashMap<>();
        Map<Map<String, String>, double[]> all = new LinkedHashMap<>();
        BenchSession session = null;
        BenchCondition opened = null;
        int lastSession = 0;
        for (Position position : sheet.positions()) {
            BenchCondition condition = PlannedConditions.of(plan, position.levels(), device);
            boolean opens = session == null || position.session() != lastSession || condition.pasteScale() != opened.pasteScale();
            if (opens) {
                session = bench.session(condition);
                opened = condition;
                lastSession = position.session();
            } else {
                session.rest(condition, pauseSeconds(device));
            }
            BenchTrial trial = session.run(condition);
            Map<String, String> levels = shown(position.levels());
            trials.add(new LimiterTrial(levels, Integer.toString(position.session()), position.number(), BenchTraces.summary(trial.trace()),
                    Math.log(trial.score()), LimiterTrial.Loops.NONE));
            add(all.computeIfAbsent(levels, key -> new double[HeldBy.values().length]), trial.truth().shares());
            if (!opens) {
                add(soaked.computeIfAbsent(levels, key -> new double[HeldBy.values().length]), trial.truth().shares());
            }
        }
        all.putAll(soaked); // the limiter looks at soaked trials where there are any, as this does
        return judged(device, Limiters.explain(trials, KnownLimits.NONE), all);
    }

    private double pauseSeconds(BenchParameters device) {
        double trial = device.workload().leadSeconds() + device.workload().workSeconds() + device.workload().tailSeconds();
        return Math.max(0, plan.budget().trialSeconds().orElse(trial) - trial);
    }

    private Map<String, String> shown(Map<String, String> levels) {
        Map<String, String> shown = new LinkedHashMap<>();
        for (Factor factor : plan.factors()) {
            if (factor.levels().size() > 1) {
                shown.put(factor.name(), levels.get(factor.name()));
            }
        }
        return shown;
    }

    private static void add(double[] to, double[] shares) {
        for (int i = 0; i < to.length; i++) {
            to[i] += shares[i];
        }
    }

    private static List<Seen> judged(BenchParameters device, LimiterAnswer answer, Map<Map<String, String>, double[]> truths) {
        List<Seen> seen = new ArrayList<>();
        for (LimiterAnswer.OfCondition condition : answer.conditions()) {
            double[] shares = truths.get(condition.levels());
            double total = Arrays.stream(shares).sum();
            Limiter truth = truth(shares, total);
            boolean right = condition.limiter() == Limiter.UNCLEAR || acceptable(condition.limiter(), shares, total);
            seen.add(new Seen(truth, condition.limiter(), right, device.name() + " under " + condition.levels() + ": truly " + truth.word() + " ("
                    + percents(shares, total) + "), called " + condition.limiter().word() + (condition.evidence().isEmpty() ? "" : ": " + condition.evidence().get(0))));
        }
        return seen;
    }

    /** The one that held at least 80 % of the time, else a mixture. */
    private static Limiter truth(double[] shares, double total) {
        for (HeldBy holder : HeldBy.values()) {
            if (shares[holder.ordinal()] / total >= 1 - COUNTS) {
                return Limiter.valueOf(holder.name());
            }
        }
        return Limiter.MIXED;
    }

    private static boolean acceptable(Limiter named, double[] shares, double total) {
        if (named == Limiter.MIXED) {
            return Arrays.stream(shares).filter(share -> share / total >= COUNTS).count() > 1;
        }
        return shares[HeldBy.valueOf(named.name()).ordinal()] / total >= COUNTS;
    }

    private static String percents(double[] shares, double total) {
        List<String> parts = new ArrayList<>();
        for (HeldBy holder : HeldBy.values()) {
            long percent = Math.round(100 * shares[holder.ordinal()] / total);
            if (percent > 0) {
                parts.add(ConstantWord.of(holder) + " " + percent + " %");
            }
        }
        return String.join(", ", parts);
    }
}
