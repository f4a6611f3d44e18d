package coldproof.reason.rehearse;

import coldproof.reason.limiter.Limiter;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * How often the limiter was named rightly in rehearsed studies with full telemetry.
 *
 * @param studies simulated
 * @param rows for each truth how often each answer was given, over all conditions of all studies
 * @param rightWhereMixed answers where two held in turn that named one of them, counted as right
 * @param wrong the wrong answers, a sentence each
 */
public record LimiterReport(int studies, Map<Limiter, Map<Limiter, Integer>> rows, int rightWhereMixed, List<String> wrong) {
    /** Copies. */
    public LimiterReport {
        Map<Limiter, Map<Limiter, Integer>> copy = new EnumMap<>(Limiter.class);
        rows.forEach((truth, named) -> copy.put(truth, Collections.unmodifiableMap(new EnumMap<>(named))));
        rows = Collections.unmodifiableMap(copy);
        wrong = List.copyOf(wrong);
    }

    /** How many conditions were judged. */
    public int conditions() {
        return rows.values().stream().flatMap(row -> row.values().stream()).mapToInt(Integer::intValue).sum();
    }

    /** How many were left open. */
    public int unclear() {
        return rows.values().stream().mapToInt(row -> row.getOrDefault(Limiter.UNCLEAR, 0)).sum();
    }

    /** Share of wrong answers among all conditions, in [0, 1]. */
    public double wrongShare() {
        return conditions() == 0 ? 0 : (double) wrong.size() / conditions();
    }
}
