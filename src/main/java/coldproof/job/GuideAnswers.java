package coldproof.job;

import coldproof.plan.Budget;
import coldproof.plan.Change;
import coldproof.plan.Claim;
import coldproof.plan.Errors;
import coldproof.plan.Layout;
import coldproof.plan.Level;
import coldproof.plan.Metric;
import coldproof.plan.NoiseAssumption;
import coldproof.plan.Plan;
import coldproof.quantity.Celsius;
import coldproof.quantity.Dimension;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.QuantityText;
import coldproof.quantity.Refused;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** Reads the answers of a guided plan. */
final class GuideAnswers {
    private static final int USUAL_TRIALS = 4;
    private static final int MOST = 60; // of each level: beyond it nobody sits at a bench by hand, and a table of sizes must be there at once
    private static final Errors ERRORS = new Errors(0.05, 0.1);
    private final Map<GuideStep, String> answers;

    GuideAnswers(Map<GuideStep, String> answers) {
        this.answers = answers;
    }

    private String text(GuideStep step) {
        return answers.getOrDefault(step, usual(step));
    }

    /** What Enter alone answers: levels that go with what is changed, else what stands with the question. */
    String usual(GuideStep step) {
        boolean baseline = step == GuideStep.BASELINE;
        if (!baseline && step != GuideStep.AGAINST) {
            return step.usual().orElse("");
        }
        return switch (text(GuideStep.FACTOR).strip().toLowerCase(Locale.ROOT)) {
            case "ambient", "air" -> step.usual().orElse("");
            case "fan" -> baseline ? "auto" : "maximum";
            case "paste" -> baseline ? "old" : "fresh";
            case "power source", "power" -> baseline ? "wall" : "battery";
            default -> "";
        };
    }

    /**
     * Reads an answer just given.
     *
     * @throws Refused if it cannot be read
     */
    void check(GuideStep step) {
        switch (step) {
            case FACTOR, METRIC -> notBlank(step);
            case BASELINE -> level(GuideStep.BASELINE);
            case AGAINST -> levels();
            case CHANGE -> change();
            case BETTER -> word(step, List.of("higher", "lower"));
            case MATTERS -> percent(step, 0.01, 500);
            case CLAIM -> claim();
            case NOISE -> noise();
            case SESSION_NOISE -> percent(step, 0, 200);
            case TRIAL_TIME -> time(step, 1, 86_400);
            case SOAK, SET_UP -> time(step, 0, 86_400);
            case OUTDOORS -> outdoorsAtMost();
            case DRAW -> watts();
            case SIZE -> size();
            case UNIT, DEVICE, TITLE, WRITE -> { }
        }
        if (answers.containsKey(GuideStep.MATTERS)) {
            PlanJob.checkText(PlanJob.text(plan(size())));
        }
    }

    private void notBlank(GuideStep step) {
        if (text(step).isBlank()) {
            throw refused(step, "nothing was entered", "a word or two");
        }
    }

    private static Refused refused(GuideStep step, String what, String expected) {
        return new Refused(Problem.of(what, Place.named(step.prompt()), expected, "Type it again, or say back."));
    }

    private void levels() {
        if (level(GuideStep.AGAINST).name().equals(level(GuideStep.BASELINE).name())) {
            throw refused(GuideStep.AGAINST, "both levels are called " + level(GuideStep.AGAINST).name(), "two different names");
        }
    }

    private Level level(GuideStep step) {
        String text = text(step);
        int equals = text.indexOf('=');
        String name = (equals < 0 ? text : text.substring(0, equals)).strip();
        String setting = equals < 0 ? "" : text.substring(equals + 1).strip();
        if (name.isEmpty()) {
            throw refused(step, "the level has no name", "a name, such as room = 21 °C");
        }
        try {
            return new Level(name, setting, Optional.of(new Celsius(QuantityText.read(setting, Dimension.TEMPERATURE, QuantityText.Bare.REFUSED))));
        } catch (QuantityText.Unreadable noTemperature) {
            return new Level(name, setting, Optional.empty());
        }
    }

    /** Whether a temperature is set: then it takes a whole sitting. */
    String usualChange() {
        return level(GuideStep.BASELINE).air().isPresent() || level(GuideStep.AGAINST).air().isPresent() ? "n" : "y";
    }

    Change change() {
        return word(GuideStep.CHANGE, List.of("yes", "no")).equals("yes") ? Change.PER_TRIAL : Change.PER_SESSION;
    }

    private String word(GuideStep step, List<String> words) {
        String said = text(step).toLowerCase(Locale.ROOT);
        return words.stream().filter(word -> word.equals(said) || word.substring(0, 1).equals(said)).findFirst()
                .orElseThrow(() -> PlanGuide.wrongWord(said, step.prompt(), words));
    }

    private Claim claim() {
        return word(GuideStep.CLAIM, List.of("gain", "same")).equals("same") ? Claim.SAME : Claim.GAIN;
    }

    private double percent(GuideStep step, double least, double most) {
        return amount(step, Dimension.PERCENT, least, most);
    }

    private double time(GuideStep step, double least, double most) {
        return amount(step, Dimension.TIME, least, most);
    }

    private double amount(GuideStep step, Dimension dimension, double least, double most) {
        QuantityText.Bare bare = dimension == Dimension.TIME ? QuantityText.Bare.REFUSED : QuantityText.Bare.ALLOWED;
        double value;
        try {
            value = QuantityText.read(text(step), dimension, bare);
        } catch (QuantityText.Unreadable unreadable) {
            throw refused(step, "\"" + text(step) + "\" is no answer here", dimension.expected());
        }
        if (!(value >= least && value <= most)) {
            throw refused(step, "\"" + text(step) + "\" is out of range", "from " + least + " to " + most + " " + dimension.unit());
        }
        return value;
    }

    Optional<NoiseAssumption> noise() {
        if (text(GuideStep.NOISE).isBlank()) {
            return Optional.empty();
        }
        double run = percent(GuideStep.NOISE, 0.01, 200);
        double session = change() == Change.PER_SESSION ? percent(GuideStep.SESSION_NOISE, 0, 200) : 0;
        return Optional.of(new NoiseAssumption(run, session, OptionalDouble.empty(), OptionalDouble.empty(), "guess"));
    }

    OptionalDouble watts() {
        return text(GuideStep.DRAW).isBlank() ? OptionalDouble.empty() : OptionalDouble.of(amount(GuideStep.DRAW, Dimension.POWER, 0.01, 100_000));
    }

    private OptionalDouble outdoorsAtMost() {
        return text(GuideStep.OUTDOORS).isBlank() ? OptionalDouble.empty() : OptionalDouble.of(time(GuideStep.OUTDOORS, 60, 30 * 86_400));
    }

    /** The levels outdoors, as far as their air says so. */
    List<String> outdoors() {
        return draft(new int[] {2, 1}).plan().budget().outdoors();
    }

    /** Size as answered, else the recommended one: sessions or runs of each level, runs of each level in a session. */
    int[] size() {
        String text = answers.getOrDefault(GuideStep.SIZE, recommendedSize());
        String[] words = text.strip().split("[\\sx+*]+");
        int[] size = {0, 1};
        for (int i = 0; i < words.length; i++) {
            OptionalInt number = i > 1 ? OptionalInt.empty() : QuantityText.whole(words[i], 0, Integer.MAX_VALUE);
            size[i] = number.orElseThrow(() -> refused(GuideStep.SIZE, "\"" + text + "\" is no size",
                    change() == Change.PER_SESSION ? "two numbers, such as 4 6" : "one number, such as 12"));
        }
        if (size[0] < 2 || size[0] > MOST || size[1] < 1 || size[1] > MOST) {
            throw refused(GuideStep.SIZE, "\"" + text + "\" is out of range", "at least 2 of each level, at most " + MOST);
        }
        return size;
    }

    String recommendedSize() {
        return change() == Change.PER_SESSION ? recommendedPerLevel() + " " + USUAL_TRIALS : Integer.toString(recommendedPerLevel());
    }

    private int recommendedPerLevel() {
        double matters = percent(GuideStep.MATTERS, 0.01, 500);
        return isHopeless(matters) ? MOST : Math.max(2, Math.min(MOST, RunsJob.perLevelFor(kind(), change(), claim(), matters, noise(), USUAL_TRIALS)));
    }

    /** Whether the noise is so large that an exact search would look at numbers nobody can run: by the normal approximation, n = 2 (1.96 + 1.28)^2 (sd / d)^2. */
    private boolean isHopeless(double mattersPercent) {
        double spread = noise().map(noise -> Math.hypot(noise.runCvPercent() / Math.sqrt(USUAL_TRIALS), noise.sessionCvPercent())).orElse(0.0);
        double normal = 2 * 3.24 * 3.24 * Math.pow(spread / mattersPercent, 2);
        return normal > 4.0 * MOST;
    }

    /** Sizes around the recommended one. */
    List<int[]> sizes() {
        int middle = recommendedPerLevel();
        List<int[]> sizes = new ArrayList<>();
        for (int perLevel : new int[] {middle - 2, middle - 1, middle, middle + 2}) {
            for (int trials : change() == Change.PER_SESSION ? new int[] {2, 4, 8} : new int[] {1}) {
                if (perLevel >= 2 && perLevel <= MOST) {
                    sizes.add(new int[] {perLevel, trials});
                }
            }
        }
        return sizes;
    }

    private Layout.Kind kind() {
        return change() == Change.PER_SESSION ? Layout.Kind.SESSIONS : Layout.Kind.ALTERNATING;
    }

    String usualTitle() {
        return "Does " + text(GuideStep.FACTOR) + " " + level(GuideStep.AGAINST).name() + " change the " + text(GuideStep.METRIC) + " against "
                + level(GuideStep.BASELINE).name() + "?";
    }

    private PlanDraft draft(int[] size) {
        Metric metric = PlanDraft.metric(text(GuideStep.METRIC), text(GuideStep.UNIT), word(GuideStep.BETTER, List.of("higher", "lower")).equals("higher"));
        OptionalDouble trial = answers.containsKey(GuideStep.TRIAL_TIME) ? OptionalDouble.of(time(GuideStep.TRIAL_TIME, 1, 86_400)) : OptionalDouble.empty();
        double soak = answers.containsKey(GuideStep.SOAK) ? time(GuideStep.SOAK, 0, 86_400) : 0;
        String title = answers.getOrDefault(GuideStep.TITLE, usualTitle());
        return new PlanDraft(title.isBlank() ? usualTitle() : title, text(GuideStep.DEVICE), metric, text(GuideStep.FACTOR), level(GuideStep.BASELINE),
                level(GuideStep.AGAINST), change(), percent(GuideStep.MATTERS, 0.01, 500), claim(), noise(), ERRORS, kind(), size[0], size[1], trial, soak, 1);
    }

    /** The plan of these answers at a size. */
    Plan plan(int[] size) {
        Plan plan = draft(size).plan();
        Map<String, Double> setUp = new LinkedHashMap<>();
        if (answers.containsKey(GuideStep.SET_UP)) {
            setUp.put(level(GuideStep.AGAINST).name(), time(GuideStep.SET_UP, 0, 86_400));
        }
        Budget budget = new Budget(plan.budget().trialSeconds(), plan.budget().soakSeconds(), setUp, plan.budget().outdoors(),
                plan.budget().outdoors().isEmpty() ? OptionalDouble.empty() : outdoorsAtMost());
        return new Plan(plan.title(), plan.device(), plan.metric(), plan.compare(), plan.mattersPercent(), plan.claim(), plan.factors(), plan.noise(), plan.errors(),
                plan.looks(), plan.layout(), budget, plan.start(), plan.abort(), plan.workload(), plan.seed());
    }
}
