package coldproof.plan;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * A line of the run sheet: one trial to come.
 *
 * @param number its place in the whole study, from 1
 * @param session its session, from 1
 * @param orderInSession its place in the session, from 1
 * @param pair its pair, from 1; 0 where trials are not paired
 * @param levels the level of every factor, by factor name
 */
public record Position(int number, int session, int orderInSession, int pair, Map<String, String> levels) {
    /** Copies, keeping the order of factors. */
    public Position {
        levels = Collections.unmodifiableMap(new LinkedHashMap<>(levels));
    }

    /** The condition in words: {@code chilled, fan maximum} with factor names where the level alone would not say it. */
    public String condition() {
        StringBuilder words = new StringBuilder();
        levels.forEach((factor, level) -> words.append(words.isEmpty() ? "" : ", ").append(factor).append(' ').append(level));
        return words.toString();
    }
}
