package coldproof.files.plan;

import coldproof.files.yaml.YamlForm;
import coldproof.files.yaml.YamlTree;
import coldproof.plan.AbortLimits;
import coldproof.plan.Better;
import coldproof.plan.Budget;
import coldproof.plan.Claim;
import coldproof.plan.Comparison;
import coldproof.plan.Errors;
import coldproof.plan.Factor;
import coldproof.plan.Layout;
import coldproof.plan.Metric;
import coldproof.plan.NoiseAssumption;
import coldproof.plan.Plan;
import coldproof.plan.StartConditions;
import coldproof.plan.Workload;
import coldproof.quantity.Dimension;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/** Reads a plan strictly and reports every problem it finds, not only the first. */
public final class PlanReader {
    private static final double SMALLEST_ERROR_PERCENT = 0.0001; // one wrong answer in a million: no test of this kind keeps a smaller promise
    private static final long SEED_WHERE_NONE_IS_WRITTEN = 1;

    private final YamlForm form;
    private final List<Problem> problems;

    private PlanReader(YamlForm form, List<Problem> problems) {
        this.form = form;
        this.problems = problems;
    }

    /**
     * Reads a plan.
     *
     * @param file name shown in problems
     * @param text the YAML
     * @throws Refused with every problem found
     */
    public static Plan read(String file, String text) {
        List<Problem> problems = new ArrayList<>();
        return new PlanReader(YamlForm.of(YamlTree.read(file, text), "the plan", problems), problems).plan();
    }

    private Plan plan() {
        version();
        String title = form.text("title", "a sentence with the question");
        String device = form.text("device", "what is tested");
        Metric metric = metric();
        List<Factor> factors = new FactorsReader(form, problems).factors();
        Optional<Comparison> compare = new ComparisonReader(form, factors).comparison();
        double matters = form.quantity("matters", Dimension.PERCENT).orElse(Double.NaN);
        if (!form.has("matters")) {
            form.missing("matters", "the smallest change worth having, such as 3 %");
        } else if (matters <= 0 || matters >= 1000) {
            problems.add(Problem.of("`matters` is " + matters + " %", form.placeOf("matters"), "a change above 0 %", "Write the smallest change worth having."));
        }
        Claim claim = form.word("claim", List.of("gain", "same")).equals(Optional.of("same")) ? Claim.SAME : Claim.GAIN;
        Optional<NoiseAssumption> noise = noise();
        Errors errors = errors();
        int looks = form.whole("looks", 1, 10).orElse(1);
        form.has("layout"); // known, though without a comparison it cannot be read
        Optional<Layout> layout = compare.isPresent() ? new LayoutReader(form, problems, factors, compare.get()).layout() : Optional.empty();
        Budget budget = new BudgetReader(form, problems, factors).budget();
        ConditionsReader conditions = new ConditionsReader(form);
        StartConditions start = conditions.start();
        AbortLimits abort = conditions.abort();
        Workload workload = new WorkloadReader(form, problems, factors, compare).workload();
        long seed = seed();
        form.finish();
        if (!problems.isEmpty()) {
            throw new Refused(problems);
        }
        return new Plan(title, device, metric, compare.orElseThrow(), matters, claim, factors, noise, errors, looks, layout.orElseThrow(), budget,
                start, abort, workload, seed);
    }

    private void version() {
        Optional<String> version = form.optionalText("coldproof");
        if (version.isEmpty()) {
            form.missing("coldproof", "the version of the plan format: coldproof: 1");
        } else if (!version.get().equals("1")) {
            form.problem(Problem.of("the plan format is \"" + version.get() + "\"", form.placeOf("coldproof"), "1",
                    "Write coldproof: 1, or use the version of coldproof that wrote this plan."));
        }
    }

    private Metric metric() {
        Optional<YamlForm> metric = form.form("metric");
        if (metric.isEmpty()) {
            form.missing("metric", "{name: render rate, unit: frames/s, better: higher}");
            return new Metric("", "", Better.HIGHER);
        }
        YamlForm inner = metric.get();
        String name = inner.text("name", "what is measured, such as render rate");
        String unit = inner.optionalText("unit").orElse("");
        if (!inner.has("better")) {
            inner.missing("better", "higher or lower");
        }
        Optional<String> better = inner.word("better", List.of("higher", "lower"));
        inner.finish();
        return new Metric(name, unit, better.orElse("higher").equals("lower") ? Better.LOWER : Better.HIGHER);
    }

    private Optional<NoiseAssumption> noise() {
        Optional<YamlForm> noise = form.form("noise");
        if (noise.isEmpty()) {
            return Optional.empty();
        }
        YamlForm inner = noise.get();
        if (!inner.has("run to run")) {
            inner.missing("run to run", "the run-to-run noise, such as 1.2 %");
        }
        double run = notNegative(inner, "run to run");
        double session = notNegative(inner, "session to session");
        OptionalDouble runDf = count(inner, "run degrees of freedom");
        OptionalDouble sessionDf = count(inner, "session degrees of freedom");
        OptionalDouble trials = count(inner, "trials per session");
        String from = inner.optionalText("from").orElse("guess");
        inner.finish();
        return Optional.of(new NoiseAssumption(run, session, runDf, sessionDf, trials, from));
    }

    private double notNegative(YamlForm inner, String key) {
        double value = inner.quantity(key, Dimension.PERCENT).orElse(0);
        if (value < 0 || value > 500) {
            form.problem(Problem.of("`" + key + "` is " + value + " %", inner.placeOf(key), "a coefficient of variation from 0 % to 500 %", "Write such a noise."));
            return 0;
        }
        return value;
    }

    private OptionalDouble count(YamlForm inner, String key) {
        Optional<Integer> whole = inner.whole(key, 1, 1_000_000);
        return whole.isPresent() ? OptionalDouble.of(whole.get()) : OptionalDouble.empty();
    }

    private Errors errors() {
        Optional<YamlForm> errors = form.form("errors");
        if (errors.isEmpty()) {
            return new Errors(0.05, 0.1);
        }
        YamlForm inner = errors.get();
        double falseAlarm = share(inner, "false alarm", 5, 49);
        double missedGain = share(inner, "missed gain", 10, 99);
        inner.finish();
        return new Errors(falseAlarm, missedGain);
    }

    private double share(YamlForm inner, String key, double whereNoneIsWritten, double most) {
        double percent = inner.quantity(key, Dimension.PERCENT).orElse(whereNoneIsWritten);
        if (!(percent >= SMALLEST_ERROR_PERCENT && percent <= most)) {
            form.problem(Problem.of("`" + key + "` is " + percent + " %", inner.placeOf(key),
                    String.format(Locale.ROOT, "from %.4f %% to %.0f %%", SMALLEST_ERROR_PERCENT, most), "Write such a rate."));
            return whereNoneIsWritten / 100;
        }
        return percent / 100;
    }

    private long seed() {
        Optional<String> text = form.optionalText("seed");
        if (text.isEmpty()) {
            return SEED_WHERE_NONE_IS_WRITTEN;
        }
        if (text.get().matches("\\d{1,18}")) {
            return Long.parseLong(text.get());
        }
        form.problem(Problem.of("`seed` is \"" + text.get() + "\"", form.placeOf("seed"), "a whole number of at most 18 digits", "Write such a number."));
        return SEED_WHERE_NONE_IS_WRITTEN;
    }
}
