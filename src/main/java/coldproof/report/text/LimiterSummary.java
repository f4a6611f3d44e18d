package coldproof.report.text;

import coldproof.reason.limiter.LimiterAnswer;

/** The limiter of every condition at one look, for studies with several. */
final class LimiterSummary {
    private LimiterSummary() {}

    /** A table, or a line for each condition where a table is too wide; nothing for a single condition, whose paragraph says it. */
    static String of(LimiterAnswer answer, int columns) {
        if (answer.conditions().size() < 2) {
            return "";
        }
        TextTable table = new TextTable("condition", "held back by", ">confidence");
        for (LimiterAnswer.OfCondition condition : answer.conditions()) {
            table.row(LimiterText.name(condition.levels()), condition.limiter().word(), LimiterText.confidence(condition));
        }
        String text = table.text("");
        return text.lines().allMatch(line -> line.codePointCount(0, line.length()) <= columns) ? text : lines(answer, columns);
    }

    private static String lines(LimiterAnswer answer, int columns) {
        StringBuilder out = new StringBuilder();
        for (LimiterAnswer.OfCondition condition : answer.conditions()) {
            out.append(Wrap.at(columns, LimiterText.name(condition.levels()) + ": " + condition.limiter().word() + ", " + LimiterText.confidence(condition)));
        }
        return out.toString();
    }
}
