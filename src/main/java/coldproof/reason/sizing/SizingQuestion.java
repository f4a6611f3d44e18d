package coldproof.reason.sizing;

import coldproof.plan.Claim;
import coldproof.plan.Layout;
import coldproof.stats.Tail;
import java.util.OptionalInt;

/**
 * What is asked of a size.
 *
 * @param layout arrangement
 * @param claim what is to be shown
 * @param effectPercent the true change, percent
 * @param runCvPercent run-to-run noise, percent
 * @param sessionCvPercent session-to-session noise, percent; counts for {@code SESSIONS} only
 * @param trialsPerSession trials of each level's session; counts for {@code SESSIONS} only
 * @param power wanted, in (0, 1)
 * @param falseAlarm error rate, in (0, 0.5); for {@code SAME} that of each one-sided test
 * @param tail one- or two-sided; counts for {@code GAIN} only
 * @param mattersPercent the margin of {@code SAME}
 * @param ratio units of the changed level for each of the baseline
 * @param perLevel units of the baseline, where the power is asked for instead of the number
 */
public record SizingQuestion(Layout.Kind layout, Claim claim, double effectPercent, double runCvPercent, double sessionCvPercent, int trialsPerSession,
        double power, double falseAlarm, Tail tail, double mattersPercent, double ratio, OptionalInt perLevel) {}
