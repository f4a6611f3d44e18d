package coldproof.stats.randomisation;

import java.util.Arrays;
import java.util.random.RandomGenerator;

/**
 * Draws a fixed number of places by swapping: the first steps of a Fisher-Yates shuffle of whatever order the last draw left, which is uniform
 * from any start. Orders that the restriction forbids are drawn again.
 */
final class ShuffledDraws implements AssignmentSpace.Draws {
    private final double[] first;
    private final double[] second;
    private final int chosen;
    private final Restriction restriction;

    ShuffledDraws(double[] first, double[] second, int chosen, Restriction restriction) {
        this.first = first;
        this.second = second;
        this.chosen = chosen;
        this.restriction = restriction;
    }

    @Override
    public void fill(RandomGenerator random, double[] statistic, double[] overlap) {
        int n = first.length;
        int[] place = new int[n];
        for (int i = 0; i < n; i++) {
            place[i] = i;
        }
        boolean[] flags = restriction == Restriction.NONE ? null : new boolean[n];
        for (int draw = 0; draw < statistic.length; draw++) {
            do {
                for (int i = 0; i < chosen; i++) {
                    int other = i + (int) Bounded.draw(random, n - i);
                    int kept = place[i];
                    place[i] = place[other];
                    place[other] = kept;
                }
            } while (flags != null && !restriction.allows(marked(flags, place)));
            double sum = 0;
            double overlapping = 0;
            for (int i = 0; i < chosen; i++) {
                sum += first[place[i]];
                overlapping += second[place[i]];
            }
            statistic[draw] = sum;
            if (overlap != null) {
                overlap[draw] = overlapping;
            }
        }
    }

    private boolean[] marked(boolean[] flags, int[] place) {
        Arrays.fill(flags, false);
        for (int i = 0; i < chosen; i++) {
            flags[place[i]] = true;
        }
        return flags;
    }
}
