package coldproof.job;

import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.QuantityText;
import coldproof.quantity.Refused;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.regex.PatternSyntaxException;

/** Finds the score of a workload in what it wrote. */
final class ScoreInOutput {
    private static final int LONGEST_LINE = 120;

    private ScoreInOutput() {}

    /**
     * The pattern of a score.
     *
     * @throws Refused if it is none, or has not exactly one group
     */
    static Pattern pattern(String text) {
        try {
            Pattern pattern = Pattern.compile(text);
            if (pattern.matcher("").groupCount() == 1) {
                return pattern;
            }
        } catch (PatternSyntaxException broken) {
            throw new Refused(Problem.of("\"" + text + "\" is no regular expression: " + broken.getDescription(), Place.named("--score-pattern"),
                    "a regular expression with one group, such as 'rate: ([0-9.]+)'", "Correct it."));
        }
        throw new Refused(Problem.of("\"" + text + "\" has not exactly one (group)", Place.named("--score-pattern"),
                "one pair of round brackets around the number", "Correct it."));
    }

    /**
     * The score in an output. The last match counts: a program that reports as it goes ends with its result.
     *
     * @param trial names the trial for a message
     * @param remedy what to do where there is none
     * @throws Refused if there is none
     */
    static double score(String trial, Pattern pattern, String output, String remedy) {
        Matcher matcher = pattern.matcher(output);
        String found = null;
        while (matcher.find()) {
            found = matcher.group(1);
        }
        if (found == null) {
            throw new Refused(Problem.of("no score was found in the output" + lastLine(output), Place.named(trial), "text that matches " + pattern.pattern(), remedy));
        }
        try {
            return QuantityText.number(found);
        } catch (QuantityText.Unreadable unreadable) {
            throw new Refused(Problem.of("the score \"" + found + "\" is " + unreadable.getMessage(), Place.named(trial), "a number", remedy));
        }
    }

    /** The last line of an output, as the end of a sentence; empty where nothing was written. */
    static String lastLine(String output) {
        String stripped = output.strip();
        String last = stripped.substring(stripped.lastIndexOf('\n') + 1);
        return last.isEmpty() ? "" : "; its last line was: " + (last.length() > LONGEST_LINE ? last.substring(0, LONGEST_LINE) + "..." : last);
    }
}
