package coldproof.stats.randomisation;

import java.util.OptionalDouble;

/** Which orders of the two levels the plan would have drawn; all allowed orders are equally likely. */
@FunctionalInterface
public interface Restriction {
    /** Every order. */
    Restriction NONE = PlainRestriction.NONE;

    /**
     * Every order but the two in which all of one level come before all of the other, where a trend could not be told from the effect.
     * With one place for each level there is no other order, and both are allowed.
     */
    Restriction NOT_SEPARATED = PlainRestriction.NOT_SEPARATED;

    /**
     * Whether the order could have been drawn.
     *
     * @param isAgainst for each place in order whether it has the level that is compared with the baseline; must not be changed
     */
    boolean allows(boolean[] isAgainst);

    /**
     * How many orders it allows, where that is known without going through them; it then allows the mirror image of each too.
     *
     * @param baseline places of the baseline, 1 or more
     * @param against places of the other level, 1 or more
     */
    default OptionalDouble allowed(int baseline, int against) {
        return OptionalDouble.empty();
    }
}
