package coldproof.stats.series;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Groups of equal values. */
final class Ties {
    private Ties() {}

    /** Sizes of the groups of equal values that have more than one member. */
    static List<Integer> sizes(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        List<Integer> sizes = new ArrayList<>();
        int start = 0;
        for (int i = 1; i <= sorted.length; i++) {
            if (i == sorted.length || sorted[i] != sorted[start]) {
                if (i - start > 1) {
                    sizes.add(i - start);
                }
                start = i;
            }
        }
        return sizes;
    }
}
