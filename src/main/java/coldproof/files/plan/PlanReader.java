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
import coldproof.quantity.NearestWord;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Reads a plan strictly and reports every problem it finds, not only the first. */
public final class PlanReader {
    private static final double SMALLEST_ERROR_PERCENT = 0.0001; // one wrong answer in a million: no test of this kind keeps a smaller promise
    private static final long SEED_WHERE_NONE_IS_WRITTEN = 1;

    private final List<Problem> problems = new ArrayList<>();
    private final YamlForm form;

    private PlanReader(YamlForm form) {
        this.form = form;
    }

    /**
     * Reads a plan.
     *
     * @param file name shown in problems
     * @param text the YAML
     * @throws Refused with every problem found
     */
    public static Plan read(String file, String text) {
        List<Problem> shared = new ArrayList<>();
        PlanReader reader = new PlanReader(YamlForm.of(YamlTree.read(file, text), "the plan", shared));
        Plan plan = reader.plan(shared);
        if (!shared.isEmpty()) {
            throw new Refused(shared);
        }
        return plan;
    }

    private Plan plan(List<Problem> shared) {
        version();
        String title = form.text("title", "a sentence with the question");
        String device = form.text("device", "what is tested");
        Metric metric = metric();
        List<Factor> factors = new FactorsReader(form, shared).factors();
        Optional<Comparison> compare = comparison(factors);
        double matters = form.quantity("matters", Dimension.PERCENT).orElse(Double.NaN);
        if (!form.has("matters")) {
            form.missing("matters", "the smallest change worth having, such as 3 %");
        } else if (matters <= 0 || matters >= 1000) {
            shared.add(Problem.of("`matters` is " + matters + " %", form.placeOf("matters"), "a change above 0 %", "Write the smallest change worth having."));
        }
        Claim claim = form.word("claim", List.of("gain", "same")).equals(Optional.of("same")) ? Claim.SAME : Claim.GAIN;
        Optional<NoiseAssumption> noise = noise();
        Errors errors = errors();
        int looks = form.whole("looks", 1, 10).orElse(1);
        form.has("layout"); // known, though without a comparison it cannot be read
        Optional<Layout> layout = compare.isPresent() ? new LayoutReader(form, shared, factors, compare.get()).layout() : Optional.empty();
        Budget budget = new BudgetReader(form, shared, factors).budget();
        StartConditions start = start();
        AbortLimits abort = abort();
        Workload workload = new WorkloadReader(form, shared, factors, compare).workload();
        long seed = seed();
        form.finish();
        if (!shared.isEmpty()) {
            return null;
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

    private Optional<Comparison> comparison(List<Factor> factors) {
        Optional<YamlForm> compare = form.form("compare");
        if (compare.isEmpty()) {
            form.missing("compare", "{factor: ambient, baseline: room, against: chilled}");
            return Optional.empty();
        }
        YamlForm inner = compare.get();
        String name = inner.text("factor", "the name of a factor");
        String baseline = inner.text("baseline", "the level compared with");
        Map<String, Place> against = inner.words("against");
        if (against.isEmpty()) {
            inner.missing("against", "the changed level");
        }
        inner.finish();
        Optional<Factor> factor = Factor.named(name, factors);
        if (factor.isEmpty()) {
            List<String> names = factors.stream().map(Factor::name).toList();
            if (!name.isEmpty() && !names.isEmpty()) {
                form.problem(new Problem("no factor is called \"" + name + "\"", inner.placeOf("factor"),
                        "one of the factors below `factors`: " + String.join(", ", names), NearestWord.of(name, names),
                        "Correct the word, then run: coldproof plan check"));
            }
            return Optional.empty();
        }
        boolean good = level(factor.get(), baseline, inner.placeOf("baseline"));
        for (Map.Entry<String, Place> level : against.entrySet()) {
            good &= level(factor.get(), level.getKey(), level.getValue());
            if (level.getKey().equals(baseline)) {
                form.problem(Problem.of("\"" + baseline + "\" is compared with itself", level.getValue(), "another level of " + name,
                        "Name the changed level."));
                good = false;
            }
        }
        return good && !against.isEmpty() ? Optional.of(new Comparison(name, baseline, List.copyOf(against.keySet()))) : Optional.empty();
    }

    private boolean level(Factor factor, String level, Place place) {
        if (level.isEmpty() || factor.levelNames().contains(level)) {
            return !level.isEmpty();
        }
        form.problem(new Problem("the factor " + factor.name() + " has no level \"" + level + "\"", place,
                "one of its levels: " + String.join(", ", factor.levelNames()), NearestWord.of(level, factor.levelNames()),
                "Correct the word, then run: coldproof plan check"));
        return false;
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
            form.problem(Problem.of("`" + key + "` is " + percent + " %", inner.placeOf(key), String.format(Locale.ROOT, "from %.4f %% to ", SMALLEST_ERROR_PERCENT) + (int) most + " %", "Write such a rate."));
            return whereNoneIsWritten / 100;
        }
        return percent / 100;
    }

    /** A state of charge, 0 to 100 %. */
    private OptionalDouble charge(YamlForm inner, String key) {
        OptionalDouble percent = inner.quantity(key, Dimension.PERCENT);
        if (percent.isPresent() && !(percent.getAsDouble() >= 0 && percent.getAsDouble() <= 100)) {
            form.problem(Problem.of("`" + key + "` is " + percent.getAsDouble() + " %", inner.placeOf(key), "a state of charge from 0 % to 100 %", "Write such a charge."));
            return OptionalDouble.empty();
        }
        return percent;
    }

    private StartConditions start() {
        Optional<YamlForm> start = form.form("start");
        if (start.isEmpty()) {
            return StartConditions.NONE;
        }
        YamlForm inner = start.get();
        OptionalDouble within = withTail(inner, "die temperature within", "of first trial", Dimension.TEMPERATURE_DIFFERENCE);
        OptionalDouble battery = charge(inner, "battery at least");
        Optional<String> source = inner.word("power source", List.of("wall", "battery"));
        inner.finish();
        return new StartConditions(within, battery, source);
    }

    private AbortLimits abort() {
        Optional<YamlForm> abort = form.form("abort");
        if (abort.isEmpty()) {
            return AbortLimits.NONE;
        }
        YamlForm inner = abort.get();
        OptionalDouble die = inner.quantity("die temperature above", Dimension.TEMPERATURE);
        OptionalDouble battery = charge(inner, "battery below");
        OptionalDouble cell = withTail(inner, "cell temperature below", "while charging", Dimension.TEMPERATURE);
        inner.finish();
        return new AbortLimits(die, battery, cell);
    }

    /** A quantity followed by words that say of what: {@code 3 K of first trial}. The words may be left out. */
    private OptionalDouble withTail(YamlForm inner, String key, String tail, Dimension dimension) {
        Optional<String> text = inner.optionalText(key);
        if (text.isEmpty()) {
            return OptionalDouble.empty();
        }
        String quantity = text.get().strip();
        if (quantity.endsWith(tail)) {
            quantity = quantity.substring(0, quantity.length() - tail.length()).strip();
        }
        return inner.quantityOf(quantity, inner.placeOf(key), "`" + key + "`", dimension);
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
