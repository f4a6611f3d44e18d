package coldproof.study;

import java.util.Map;

/**
 * A person confirmed having read a caution.
 *
 * @param rule name of the rule
 * @param phase part of the job it applied to
 * @param level {@code note}, {@code care} or {@code stop}
 * @param by how the person signs, in their own words; may be empty
 * @param conditions what it was judged on, by name
 */
public record CautionAcknowledged(String rule, String phase, String level, String by, Map<String, Observed> conditions) implements Event {
    /** Refuses blank words. */
    public CautionAcknowledged {
        Values.word("rule", rule);
        Values.word("phase", phase);
        Values.word("level", level);
        Values.text("by", by);
        conditions = Values.ordered("conditions", conditions);
    }

    @Override
    public EventKind kind() {
        return EventKind.CAUTION_ACKNOWLEDGED;
    }
}
