package coldproof.reason.safety;

import java.util.List;

/**
 * A rule: when it holds, in which part of the job, what it says and where it comes from.
 *
 * @param id its name, lower-case words joined by hyphens
 * @param topic what it is about
 * @param level how much it asks
 * @param phase the part of the job it belongs to
 * @param also other parts in which it holds as well
 * @param when all of these must hold; empty: always
 * @param card the line on the field card, at most {@value #LONGEST_CARD_LINE} characters
 * @param text what to do, in full
 * @param why the reason
 * @param source where the number comes from, or {@value #COMMON_PRACTICE}
 * @param mayBeSetAside whether a person may set it aside with a reason
 */
public record SafetyRule(String id, String topic, SafetyLevel level, Phase phase, List<Phase> also, List<Condition> when, String card, String text,
        String why, String source, boolean mayBeSetAside) {
    /** Longest line on the field card, in characters. */
    public static final int LONGEST_CARD_LINE = 70;
    /** The source of a fact of the trade. */
    public static final String COMMON_PRACTICE = "common practice";

    /** Refuses blanks, a name that is none and a line too long for the card. */
    public SafetyRule {
        also = List.copyOf(also);
        when = List.copyOf(when);
        if (!id.matches("[a-z0-9]+(-[a-z0-9]+)*")) {
            throw new IllegalArgumentException("\"" + id + "\" is no name of a rule: lower-case words joined by hyphens");
        }
        if (card.isBlank() || text.isBlank() || why.isBlank() || source.isBlank() || topic.isBlank()) {
            throw new IllegalArgumentException("rule " + id + " lacks a card line, a text, a reason, a topic or a source");
        }
        if (card.length() > LONGEST_CARD_LINE) {
            throw new IllegalArgumentException("the card line of rule " + id + " has " + card.length() + " characters, more than "
                    + LONGEST_CARD_LINE);
        }
        if (also.contains(phase)) {
            throw new IllegalArgumentException("rule " + id + " names the phase " + phase.word() + " twice");
        }
    }

    /** Whether it holds in this part of the job. */
    public boolean belongsTo(Phase asked) {
        return phase == asked || also.contains(asked);
    }

    /** The same at another level. */
    public SafetyRule at(SafetyLevel other) {
        return new SafetyRule(id, topic, other, phase, also, when, card, text, why, source, mayBeSetAside);
    }

    /** The same with other conditions. */
    public SafetyRule under(List<Condition> others) {
        return new SafetyRule(id, topic, level, phase, also, others, card, text, why, source, mayBeSetAside);
    }
}
