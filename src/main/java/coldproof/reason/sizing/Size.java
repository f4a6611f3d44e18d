package coldproof.reason.sizing;

import coldproof.plan.Claim;
import coldproof.plan.Layout;
import java.util.List;
import java.util.OptionalDouble;

/**
 * The size of a study and what it can see.
 *
 * @param layout arrangement
 * @param claim what is to be shown
 * @param logEffect the true change, natural log
 * @param perLevel sessions or trials of baseline and each changed level; one number of pairs, and of sessions that hold both levels
 * @param trialsTotal all trials
 * @param degreesOfFreedom of the test
 * @param power at this size; of each change, where several are judged together
 * @param powerOneFewer with one unit fewer of each level, where that was tried
 * @param smallestDetectableLog the smallest change seen with the wanted power, natural log; empty for {@code SAME}
 * @param smallestMarginLog the smallest margin within which sameness is shown with the wanted power; empty for {@code GAIN}
 * @param smallestRandomisationP the smallest p a randomisation test of this size can give
 * @param warnings what to know
 */
public record Size(Layout.Kind layout, Claim claim, double logEffect, List<Integer> perLevel, long trialsTotal, double degreesOfFreedom, double power,
        OptionalDouble powerOneFewer, OptionalDouble smallestDetectableLog, OptionalDouble smallestMarginLog, double smallestRandomisationP,
        List<Warning> warnings) {
    /** Copies. */
    public Size {
        perLevel = List.copyOf(perLevel);
        warnings = List.copyOf(warnings);
    }
}
