package coldproof.reason.checklist;

import coldproof.plan.Metric;
import coldproof.quantity.Dimension;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.QuantityText;
import coldproof.quantity.Refused;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * A score as typed: one number, or the numbers of all loops with spaces or semicolons between them; the unit may follow.
 *
 * @param score the number, or the mean of the loops
 * @param loops all loops in order; empty for a single number
 */
public record ScoreText(double score, List<Double> loops) {
    private static final int MOST_LOOPS = 10_000;

    /** Copies. */
    public ScoreText {
        loops = List.copyOf(loops);
    }

    /**
     * Reads it.
     *
     * @throws Refused if it is no number above 0, or in another unit
     */
    public static ScoreText read(String text, Metric metric, String place) {
        String bare = withoutUnit(text.strip(), metric);
        if (metric.unit().equals("s") && bare.matches(".*[a-zA-Z].*")) {
            return new ScoreText(seconds(bare, place), List.of());
        }
        List<Double> numbers = new ArrayList<>();
        for (String word : bare.split("[\\s;]+")) {
            if (!word.isEmpty()) {
                numbers.add(number(word, metric, place));
            }
        }
        if (numbers.isEmpty() || numbers.size() > MOST_LOOPS) {
            throw refused(numbers.isEmpty() ? "nothing was entered" : "there are more than " + MOST_LOOPS + " loops", metric, place);
        }
        if (numbers.size() == 1) {
            return new ScoreText(numbers.get(0), List.of());
        }
        return new ScoreText(Loops.of(numbers, metric.better()).mean(), numbers);
    }

    private static String withoutUnit(String text, Metric metric) {
        String unit = metric.unit().toLowerCase(Locale.ROOT);
        boolean ends = !unit.isEmpty() && text.toLowerCase(Locale.ROOT).endsWith(unit);
        return ends ? text.substring(0, text.length() - unit.length()).strip() : text;
    }

    private static double seconds(String text, String place) {
        try {
            double seconds = QuantityText.read(text, Dimension.TIME, QuantityText.Bare.ALLOWED);
            if (seconds > 0) {
                return seconds;
            }
            throw new Refused(Problem.of("\"" + text + "\" is no time above 0", Place.named(place), "a time such as 92.4 s or 2 min 31 s", "Read it again."));
        } catch (QuantityText.Unreadable unreadable) {
            throw new Refused(Problem.of("\"" + text + "\" is no time", Place.named(place), "a time such as 92.4 s or 2 min 31 s, or a word: "
                    + String.join(", ", Command.words()), "Read it again."));
        }
    }

    private static double number(String word, Metric metric, String place) {
        try {
            double number = QuantityText.number(word);
            if (number > 0) {
                return number;
            }
            throw refused("\"" + word + "\" is not above 0", metric, place);
        } catch (QuantityText.Unreadable unreadable) {
            throw refused("\"" + word + "\" is no number", metric, place);
        }
    }

    private static Refused refused(String what, Metric metric, String place) {
        return new Refused(Problem.of(what, Place.named(place), "a number above 0" + (metric.unit().isEmpty() ? "" : " in " + metric.unit())
                + ", or those of all loops; or a word: " + String.join(", ", Command.words()), "Read it again; a run that failed is skipped with its reason."));
    }
}
