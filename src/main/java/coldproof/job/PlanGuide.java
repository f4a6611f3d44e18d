package coldproof.job;

import coldproof.plan.Change;
import coldproof.plan.Plan;
import coldproof.quantity.NearestWord;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import coldproof.reason.sizing.SizingAnswer;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Asks for a plan step by step. Every answer can be taken back; after each the plan as it would be is at hand with what it tells and takes.
 * Like the checklist it takes typed lines, so that every face asks the same.
 */
public final class PlanGuide {
    private static final int LONGEST_ANSWER = 400;
    private final Map<GuideStep, String> answers = new EnumMap<>(GuideStep.class);
    private final GuideAnswers reader = new GuideAnswers(answers);

    /**
     * One size to choose.
     *
     * @param perLevel sessions, or runs, of each level
     * @param trials runs of each level in a session
     * @param answer what it tells and takes
     * @param runs all runs
     */
    public record Choice(int perLevel, int trials, SizingAnswer answer, int runs) {}

    /** The question at hand; empty when the plan is complete. */
    public Optional<GuideStep> step() {
        for (GuideStep step : GuideStep.values()) {
            if (!answers.containsKey(step) && applies(step)) {
                return Optional.of(step);
            }
        }
        return Optional.empty();
    }

    private boolean applies(GuideStep step) {
        return switch (step) {
            case SESSION_NOISE -> reader.change() == Change.PER_SESSION && reader.noise().isPresent();
            case SET_UP -> reader.change() == Change.PER_SESSION;
            case OUTDOORS -> !reader.outdoors().isEmpty();
            default -> true;
        };
    }

    /** What Enter alone answers to the question at hand; empty where it answers nothing. */
    public String usual() {
        GuideStep step = step().orElse(GuideStep.WRITE);
        return switch (step) {
            case SIZE -> reader.recommendedSize();
            case TITLE -> reader.usualTitle();
            case CHANGE -> reader.usualChange();
            default -> reader.usual(step);
        };
    }

    /**
     * Takes an answer; {@code back} takes the last one back.
     *
     * @throws Refused if it is no answer; the same question stands then
     */
    public void answer(String line) {
        String text = line.strip();
        GuideStep step = step().orElseThrow();
        if (text.equalsIgnoreCase("back") || text.equals("<")) {
            back();
            return;
        }
        if (text.length() > LONGEST_ANSWER) {
            throw new Refused(Problem.of("the answer has " + text.length() + " characters", Place.named(step.prompt()), "at most " + LONGEST_ANSWER, "Make it shorter."));
        }
        String given = text.isEmpty() ? usual() : text;
        answers.put(step, given);
        try {
            reader.check(step);
        } catch (Refused | IllegalArgumentException wrong) {
            answers.remove(step);
            throw wrong instanceof Refused refused ? refused
                    : new Refused(Problem.of(wrong.getMessage(), Place.named(step.prompt()), "", "Answer it differently, or say back."));
        }
    }

    private void back() {
        List<GuideStep> given = new ArrayList<>(answers.keySet());
        if (given.isEmpty()) {
            throw new Refused(Problem.of("this is the first question", Place.named("back"), "", "Answer it, or leave with Ctrl-D."));
        }
        answers.remove(given.get(given.size() - 1));
    }

    /** The plan as it would be now; empty until it is known what is changed and measured. */
    public Optional<Plan> plan() {
        return answers.containsKey(GuideStep.MATTERS) ? Optional.of(reader.plan(reader.size())) : Optional.empty();
    }

    /** What the plan would tell and take as it stands. */
    public Optional<SizingAnswer> sizing() {
        return plan().map(RunsJob::ofPlan);
    }

    /** Energy of all runs, Wh; empty where power or time is not known. */
    public OptionalDouble wattHours() {
        Optional<Plan> plan = plan();
        OptionalDouble watts = reader.watts();
        if (plan.isEmpty() || watts.isEmpty() || plan.get().budget().trialSeconds().isEmpty()) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(watts.getAsDouble() * plan.get().budget().trialSeconds().getAsDouble() / 3600 * StudyView.sheet(plan.get()).positions().size());
    }

    /** The sizes to choose from, at the question of size. */
    public List<Choice> choices() {
        List<Choice> choices = new ArrayList<>();
        for (int[] size : reader.sizes()) {
            Plan plan = reader.plan(size);
            choices.add(new Choice(size[0], size[1], RunsJob.ofPlan(plan), StudyView.sheet(plan).positions().size()));
        }
        return choices;
    }

    /** Whether sittings are compared, so that a size is two numbers. */
    public boolean comparesSessions() {
        return reader.change() == Change.PER_SESSION;
    }

    static Refused wrongWord(String word, String place, List<String> words) {
        String shown = word.length() > 60 ? word.substring(0, 60) + "..." : word;
        return new Refused(new Problem("\"" + shown + "\" is no answer here", Place.named(place), "one of: " + String.join(", ", words),
                NearestWord.of(shown.toLowerCase(Locale.ROOT), words), "Type it again, or say back."));
    }
}
