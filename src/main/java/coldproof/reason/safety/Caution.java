package coldproof.reason.safety;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * A rule that holds.
 *
 * @param rule the rule
 * @param phase the part of the job it was judged for
 * @param decided what decided it, by reading, in the order of the rule's conditions; empty for a rule that always holds
 */
public record Caution(SafetyRule rule, Phase phase, Map<Reading, Value> decided) {
    /** Copies, keeping the order. */
    public Caution {
        decided = Collections.unmodifiableMap(new LinkedHashMap<>(decided));
    }

    /** How much it asks. */
    public SafetyLevel level() {
        return rule.level();
    }
}
