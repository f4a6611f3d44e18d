package coldproof.stats.randomisation;

import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Whole schedules listed one by one: for plans whose sessions were not drawn independently of each other. */
final class ScheduleSpace implements AssignmentSpace {
    private final double[] statistics;
    private final double[] overlaps;
    private final double observed;
    private final double largestShare;
    private final RandomisationScheme scheme;

    /**
     * Evaluates every schedule.
     *
     * @param scores of all trials in order
     * @param isAgainst the schedule that was drawn
     * @param schedules all that could have been, distinct, the drawn one among them
     */
    ScheduleSpace(double[] scores, boolean[] isAgainst, List<boolean[]> schedules) {
        Sequences.requireDistinct(schedules);
        double[] indicator = new double[scores.length];
        for (int i = 0; i < indicator.length; i++) {
            indicator[i] = isAgainst[i] ? 1 : 0;
        }
        if (Sequences.indexOf(schedules, isAgainst) < 0) {
            throw new IllegalArgumentException("the observed schedule is none of those allowed");
        }
        statistics = new double[schedules.size()];
        overlaps = new double[schedules.size()];
        boolean mirrored = true;
        Set<String> known = new HashSet<>();
        schedules.forEach(schedule -> known.add(Arrays.toString(schedule)));
        double largest = 0;
        for (int s = 0; s < statistics.length; s++) {
            statistics[s] = UnitSpace.difference(scores, schedules.get(s));
            overlaps[s] = UnitSpace.difference(indicator, schedules.get(s));
            largest = Math.max(largest, Math.abs(statistics[s]));
            mirrored &= known.contains(Arrays.toString(RandomisationScheme.mirror(schedules.get(s))));
        }
        observed = UnitSpace.difference(scores, isAgainst);
        largestShare = largest;
        scheme = RandomisationScheme.schedules(statistics.length, mirrored);
    }

    @Override
    public RandomisationScheme scheme() {
        return scheme;
    }

    @Override
    public double observed() {
        return observed;
    }

    @Override
    public double largestShare() {
        return largestShare;
    }

    @Override
    public boolean isCountable(double exactUpTo) {
        return true; // they are all listed already
    }

    @Override
    public double countingWork() {
        return statistics.length;
    }

    @Override
    public Tally count(double shift) {
        Thresholds thresholds = new Thresholds(observed - shift, largestShare);
        long extreme = 0;
        long greater = 0;
        long less = 0;
        for (int s = 0; s < statistics.length; s++) {
            double statistic = statistics[s] - shift * overlaps[s];
            extreme += thresholds.allExtreme() || thresholds.isExtreme(statistic) ? 1 : 0;
            greater += statistic >= thresholds.greaterFrom ? 1 : 0;
            less += statistic <= thresholds.lessTo ? 1 : 0;
        }
        return new Tally(statistics.length, extreme, greater, less);
    }

    @Override
    public Draws draws() {
        return (random, statistic, overlap) -> {
            for (int draw = 0; draw < statistic.length; draw++) {
                int schedule = (int) Bounded.draw(random, statistics.length);
                statistic[draw] = statistics[schedule];
                if (overlap != null) {
                    overlap[draw] = overlaps[schedule];
                }
            }
        };
    }
}
