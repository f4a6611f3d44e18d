package coldproof.study;

/**
 * The person set a safety rule aside, with a reason; never silent.
 *
 * @param rule name of the rule
 * @param reason why, never blank
 */
public record RuleLoosened(String rule, String reason) implements Event {
    /** Refuses blank words. */
    public RuleLoosened {
        Values.word("rule", rule);
        Values.word("reason", reason);
    }

    @Override
    public EventKind kind() {
        return EventKind.RULE_LOOSENED;
    }
}
