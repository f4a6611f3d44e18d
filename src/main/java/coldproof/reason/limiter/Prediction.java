package coldproof.reason.limiter;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * One prediction of a hypothesis and what became of it.
 *
 * @param hypothesis what is supposed to limit
 * @param levels the condition in which it is supposed to; empty for any condition, of a change that nobody made
 * @param change what was changed from there, in words
 * @param quantity about what
 * @param predicted in words
 * @param observed in words, with an interval where there is one
 * @param result whether the observation agrees
 */
public record Prediction(Hypothesis hypothesis, Map<String, String> levels, String change, String quantity, String predicted, String observed, Result result) {
    /** Copies, keeping the order of the levels. */
    public Prediction {
        levels = Collections.unmodifiableMap(new LinkedHashMap<>(levels));
    }

    /** What became of a prediction. */
    public enum Result {
        /** The whole interval lies where it was predicted. */
        SUPPORTED("supported"),
        /** The whole interval lies elsewhere. */
        RULED_OUT("ruled out"),
        /** Not measured, or the interval is too wide. */
        UNTESTED("untested");

        private final String word;

        Result(String word) {
            this.word = word;
        }

        /** In words. */
        public String word() {
            return word;
        }
    }
}
