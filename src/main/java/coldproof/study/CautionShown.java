package coldproof.study;

import java.util.Map;

/**
 * A safety rule applied and was shown.
 *
 * @param rule name of the rule
 * @param phase part of the job it applied to
 * @param level {@code note}, {@code care} or {@code stop}
 * @param conditions what it was judged on, by name
 */
public record CautionShown(String rule, String phase, String level, Map<String, Observed> conditions) implements Event {
    /** Refuses blank words. */
    public CautionShown {
        Values.word("rule", rule);
        Values.word("phase", phase);
        Values.word("level", level);
        conditions = Values.ordered("conditions", conditions);
    }

    @Override
    public EventKind kind() {
        return EventKind.CAUTION_SHOWN;
    }
}
