package coldproof.plan;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * What things cost in time.
 *
 * @param trialSeconds one trial, with what belongs to it
 * @param soakSeconds waiting at the start of a session until the device has settled
 * @param setUpSeconds opening a session, by level of the per-session factor; the empty name is for all others
 * @param outdoors the levels that mean standing outdoors
 * @param outdoorsAtMostSeconds the most time outdoors in all
 */
public record Budget(OptionalDouble trialSeconds, double soakSeconds, Map<String, Double> setUpSeconds, List<String> outdoors,
        OptionalDouble outdoorsAtMostSeconds) {
    /** Copies. */
    public Budget {
        setUpSeconds = Collections.unmodifiableMap(new LinkedHashMap<>(setUpSeconds));
        outdoors = List.copyOf(outdoors);
    }

    /** Time to open a session of a level, soak included. */
    public double openingSeconds(String level) {
        return setUpSeconds.getOrDefault(level, setUpSeconds.getOrDefault("", 0.0)) + soakSeconds;
    }
}
