package coldproof.stats.randomisation;

import java.util.List;
import java.util.OptionalDouble;

/**
 * What a plan's randomisation can show at best, known before there are data.
 *
 * @param assignments how many assignments the plan draws from, all equally likely; beyond 2^53 rounded
 * @param smallestP the smallest two-sided p: 2 / assignments where every assignment has its mirror image among them (which gives the same
 *     absolute difference), else 1 / assignments
 * @param counted whether {@code assignments} is the number itself; false for a restriction on more orders than can be gone through, when it is the
 *     number without the restriction and {@code smallestP} a lower bound
 */
public record RandomisationScheme(double assignments, double smallestP, boolean counted) {
    private static final double MOST_TO_GO_THROUGH = 2e7;

    /** Checks the ranges. */
    public RandomisationScheme {
        if (!(assignments >= 1) || !(smallestP > 0 && smallestP <= 1)) {
            throw new IllegalArgumentException(assignments + " assignments with smallest p " + smallestP);
        }
    }

    /** More assignments than a double holds are given as the largest double: no p that small is ever looked at. */
    private static RandomisationScheme of(double all, boolean mirrored, boolean counted) {
        double assignments = Math.min(Double.MAX_VALUE, all);
        return new RandomisationScheme(assignments, Math.min(1, (mirrored ? 2 : 1) / assignments), counted);
    }

    /**
     * Levels drawn freely for trials, or for whole sessions.
     *
     * @param baseline how many have the baseline, 1 or more
     * @param against how many have the other level, 1 or more
     * @throws IllegalArgumentException if a level has none
     */
    public static RandomisationScheme groups(int baseline, int against) {
        return groups(baseline, against, Restriction.NONE);
    }

    /**
     * Levels drawn for trials or whole sessions among the orders that a restriction allows.
     *
     * @throws IllegalArgumentException if a level has none, or no order is allowed
     */
    public static RandomisationScheme groups(int baseline, int against, Restriction restriction) {
        requireGroups(baseline, against);
        int n = baseline + against;
        double all = Combinations.count(n, against);
        boolean mirrored = baseline == against;
        if (restriction == Restriction.NONE) {
            return of(all, mirrored, true);
        }
        if (restriction == Restriction.NOT_SEPARATED) {
            return of(n <= 2 ? all : all - 2, mirrored, true);
        }
        OptionalDouble known = restriction.allowed(baseline, against);
        if (known.isPresent() && known.getAsDouble() > 0) {
            return of(known.getAsDouble(), mirrored, true);
        }
        if (all > MOST_TO_GO_THROUGH) {
            return of(all, mirrored, false);
        }
        long[] allowedAndMirrored = new long[2];
        GroupEnumeration.visit(new double[n], new double[n], against, (sum, overlap, flags) -> {
            if (restriction.allows(flags)) {
                allowedAndMirrored[0]++;
                allowedAndMirrored[1] += mirrored && restriction.allows(mirror(flags)) ? 1 : 0;
            }
        });
        if (allowedAndMirrored[0] == 0) {
            throw new IllegalArgumentException("the restriction allows no order of " + baseline + " and " + against);
        }
        return of(allowedAndMirrored[0], allowedAndMirrored[0] == allowedAndMirrored[1], true);
    }

    /** Whole schedules listed one by one. */
    static RandomisationScheme schedules(int count, boolean mirrored) {
        return of(count, mirrored, true);
    }

    static boolean[] mirror(boolean[] flags) {
        boolean[] mirror = new boolean[flags.length];
        for (int i = 0; i < flags.length; i++) {
            mirror[i] = !flags[i];
        }
        return mirror;
    }

    static void requireGroups(int baseline, int against) {
        if (baseline < 1 || against < 1) {
            throw new IllegalArgumentException("a level has no place: " + baseline + " of the baseline, " + against + " of the other level");
        }
    }

    /**
     * Pairs whose order was drawn by lot, each by itself.
     *
     * @param pairs 1 or more
     */
    public static RandomisationScheme pairs(int pairs) {
        if (pairs < 1) {
            throw new IllegalArgumentException("pairs " + pairs + " is not 1 or more");
        }
        return of(Math.pow(2, pairs), true, true);
    }

    /**
     * Pairs of which a fixed number begins with the baseline, which ones drawn by lot.
     *
     * @param baselineFirst pairs that begin with the baseline, 1 or more
     * @param againstFirst pairs that begin with the other level, 1 or more
     */
    public static RandomisationScheme counterbalancedPairs(int baselineFirst, int againstFirst) {
        return groups(baselineFirst, againstFirst);
    }

    /**
     * Trials drawn afresh inside every session (or sessions inside every block).
     *
     * @param baseline trials with the baseline in each session, 1 or more each
     * @param against trials with the other level in each session
     * @param restriction on the order inside a session
     * @throws IllegalArgumentException if the lengths differ, a session lacks a level or no order is allowed
     */
    public static RandomisationScheme within(int[] baseline, int[] against, Restriction restriction) {
        if (baseline.length != against.length || baseline.length == 0) {
            throw new IllegalArgumentException(baseline.length + " and " + against.length + " sessions");
        }
        double assignments = 1;
        boolean mirrored = true;
        boolean counted = true;
        for (int i = 0; i < baseline.length; i++) {
            RandomisationScheme session = groups(baseline[i], against[i], restriction);
            assignments *= session.assignments;
            mirrored &= session.smallestP * session.assignments > 1; // 2 where mirrored
            counted &= session.counted;
        }
        return of(assignments, mirrored, counted);
    }

    /**
     * A sequence drawn for every session from those listed for it, all distinct and equally likely (ABBA and BAAB, say).
     *
     * @param allowedOfSession for each session the sequences, true where the trial has the level compared with the baseline
     * @throws IllegalArgumentException if a session has no sequence, or one lacks a level or is listed twice
     */
    public static RandomisationScheme sequences(List<List<boolean[]>> allowedOfSession) {
        double assignments = 1;
        boolean mirrored = true;
        for (List<boolean[]> allowed : allowedOfSession) {
            Sequences.requireDistinct(allowed);
            assignments *= allowed.size();
            for (boolean[] sequence : allowed) {
                mirrored &= Sequences.indexOf(allowed, mirror(sequence)) >= 0;
            }
        }
        return of(assignments, mirrored, true);
    }
}
