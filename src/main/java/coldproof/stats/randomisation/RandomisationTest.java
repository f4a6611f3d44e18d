package coldproof.stats.randomisation;

import coldproof.stats.interval.ConfidenceInterval;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.random.RandomGenerator;

/**
 * The randomisation test: the observed difference set against those that every other assignment the plan could have drawn would have shown,
 * had the level made no difference. It needs no distribution of the scores and is as valid as the lot was fair.
 *
 * <p>Up to the effort's limit every assignment is counted; beyond it m are drawn at random and {@code p = (b + 1) / (m + 1)}. Statistics that
 * differ by rounding only (1e-10) count as ties, in favour of no difference.
 *
 * @see "E. S. Edgington, P. Onghena, Randomization Tests, 4th ed. (2007)"
 * @see "B. Phipson, G. K. Smyth, Stat. Appl. Genet. Mol. Biol. 9 (2010) art. 39 ((b + 1) / (m + 1))"
 */
public final class RandomisationTest {
    private static final double EXACT_INTERVAL_WORK = 70_000; // additions for one count, of which an interval needs about a hundred
    private static final int MOST_INTERVAL_DRAWS = 200_000;
    private static final int BLOCK = 4096;

    private final AssignmentSpace space;

    private RandomisationTest(AssignmentSpace space) {
        this.space = space;
    }

    /**
     * Levels drawn for trials in free order, or for whole sessions (hand in the means of the sessions). Statistic: difference of means.
     *
     * @param scores log scores, in the order they were taken
     * @param isAgainst whether each has the level compared with the baseline
     * @param restriction which orders the plan could have drawn
     * @throws IllegalArgumentException if lengths differ, a level has no score, a score is not finite or the order is not allowed
     */
    public static RandomisationTest ofGroups(double[] scores, boolean[] isAgainst, Restriction restriction) {
        return new RandomisationTest(GroupSpace.ofGroups(scores, isAgainst, restriction));
    }

    /**
     * Pairs whose order was drawn by lot, each by itself. Statistic: mean difference; assignments: all changes of sign.
     *
     * @param differences against minus baseline, one for each pair
     * @throws IllegalArgumentException if there is none or one is not finite
     */
    public static RandomisationTest ofPairs(double[] differences) {
        return new RandomisationTest(UnitSpace.ofPairs(differences));
    }

    /**
     * Pairs of which a fixed number begins with the baseline, which ones drawn by lot. Statistic: mean difference.
     *
     * @param differences against minus baseline, one for each pair
     * @param isBaselineFirst whether the pair began with the baseline
     * @throws IllegalArgumentException if lengths differ, all pairs begin alike or a difference is not finite
     */
    public static RandomisationTest ofCounterbalancedPairs(double[] differences, boolean[] isBaselineFirst) {
        return new RandomisationTest(GroupSpace.ofPairs(differences, isBaselineFirst));
    }

    /**
     * Levels drawn afresh inside every session: trials inside sessions, or sessions inside blocks. Statistic: mean over sessions of the
     * difference inside the session.
     *
     * @param scores log scores in the order they were taken
     * @param session label of the session of each
     * @param isAgainst whether each has the level compared with the baseline
     * @param restriction on the order inside a session
     * @throws IllegalArgumentException if lengths differ, a session lacks a level, a score is not finite or an order is not allowed
     */
    public static RandomisationTest withinSessions(double[] scores, int[] session, boolean[] isAgainst, Restriction restriction) {
        List<double[]> scoresOf = new ArrayList<>();
        List<boolean[]> levelsOf = new ArrayList<>();
        split(scores, session, isAgainst, scoresOf, levelsOf);
        return new RandomisationTest(UnitSpace.ofSessions(scoresOf, levelsOf, restriction));
    }

    /**
     * A sequence drawn for every session from those listed for it. Statistic as in {@link #withinSessions}.
     *
     * @param allowedOfSession for each session, in the order of first appearance, its distinct sequences, the observed one among them
     * @throws IllegalArgumentException if lengths differ, a session's sequence is not among those allowed or a sequence lacks a level
     */
    public static RandomisationTest ofSequences(double[] scores, int[] session, boolean[] isAgainst, List<List<boolean[]>> allowedOfSession) {
        List<double[]> scoresOf = new ArrayList<>();
        List<boolean[]> levelsOf = new ArrayList<>();
        split(scores, session, isAgainst, scoresOf, levelsOf);
        if (allowedOfSession.size() != scoresOf.size()) {
            throw new IllegalArgumentException("sequences for " + allowedOfSession.size() + " sessions, not " + scoresOf.size());
        }
        return new RandomisationTest(UnitSpace.ofSequences(scoresOf, levelsOf, allowedOfSession));
    }

    /**
     * A whole schedule drawn from a list, for plans whose sessions were not drawn independently. Statistic: difference of means.
     *
     * @param schedules all that could have been drawn, distinct, equally likely, the observed one among them
     * @throws IllegalArgumentException if a length differs, a schedule lacks a level, is listed twice, or the observed one is missing
     */
    public static RandomisationTest ofSchedules(double[] scores, boolean[] isAgainst, List<boolean[]> schedules) {
        return new RandomisationTest(new ScheduleSpace(scores, isAgainst, schedules));
    }

    private static void split(double[] scores, int[] session, boolean[] isAgainst, List<double[]> scoresOf, List<boolean[]> levelsOf) {
        if (session.length != scores.length || isAgainst.length != scores.length) {
            throw new IllegalArgumentException(scores.length + " scores, " + session.length + " sessions, " + isAgainst.length + " levels");
        }
        for (int label : Arrays.stream(session).distinct().toArray()) {
            int size = (int) Arrays.stream(session).filter(each -> each == label).count();
            double[] ofSession = new double[size];
            boolean[] levels = new boolean[size];
            int at = 0;
            for (int i = 0; i < scores.length; i++) {
                if (session[i] == label) {
                    ofSession[at] = scores[i];
                    levels[at++] = isAgainst[i];
                }
            }
            scoresOf.add(ofSession);
            levelsOf.add(levels);
        }
    }

    /** Number of assignments and smallest p. */
    public RandomisationScheme scheme() {
        return space.scheme();
    }

    /** The observed difference. */
    public double statistic() {
        return space.observed();
    }

    /**
     * Tests that the level makes no difference.
     *
     * @param random used only where the assignments are too many to count
     */
    public RandomisationResult test(Effort effort, RandomGenerator random) {
        RandomisationScheme scheme = space.scheme();
        if (space.isCountable(effort.exactUpTo())) {
            Tally tally = space.count(0);
            return new RandomisationResult(space.observed(), tally.extreme() / tally.total(), tally.greater() / tally.total(),
                    tally.less() / tally.total(), tally.total(), scheme.smallestP(), true, 0);
        }
        Thresholds thresholds = new Thresholds(space.observed(), space.largestShare());
        AssignmentSpace.Draws draws = space.draws();
        long extreme = 0;
        long greater = 0;
        long less = 0;
        double[] statistic = new double[Math.min(BLOCK, effort.resamples())];
        for (int left = effort.resamples(); left > 0; left -= statistic.length) {
            statistic = left < statistic.length ? new double[left] : statistic;
            draws.fill(random, statistic, null);
            for (double each : statistic) {
                extreme += thresholds.isExtreme(each) ? 1 : 0;
                greater += each >= thresholds.greaterFrom ? 1 : 0;
                less += each <= thresholds.lessTo ? 1 : 0;
            }
        }
        double divisor = effort.resamples() + 1.0;
        return new RandomisationResult(space.observed(), ((thresholds.allExtreme() ? effort.resamples() : extreme) + 1) / divisor,
                (greater + 1) / divisor, (less + 1) / divisor, scheme.assignments(), scheme.smallestP(), false, effort.resamples());
    }

    /**
     * All differences d that the test would not reject at {@code 1 - level}, had every score of the other level been lowered by d. An end is
     * infinite where no d is ever rejected, which is so when the smallest p is above {@code 1 - level}.
     *
     * <p>Every assignment is as extreme as the observed one for d in an interval about the observed difference, so the two-sided p falls
     * steadily on either side of it and each end is an order statistic of the assignments' own ends. Where counting is cheap it is found to
     * rounding by bisection of exact counts, else from up to 200,000 random draws.
     *
     * @param level in (0, 1)
     * @param random used only where counting is not cheap
     */
    public ConfidenceInterval interval(double level, Effort effort, RandomGenerator random) {
        ConfidenceInterval.requireLevel(level);
        if (space.isCountable(effort.exactUpTo()) && space.countingWork() <= EXACT_INTERVAL_WORK) {
            return new CountedInterval(space, 1 - level).find();
        }
        return DrawnInterval.find(space, level, Math.min(MOST_INTERVAL_DRAWS, effort.resamples()), random);
    }
}
