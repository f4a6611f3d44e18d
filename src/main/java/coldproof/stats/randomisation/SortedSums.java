package coldproof.stats.randomisation;

import java.util.Arrays;

/** Sorted lists of sums and the counting of pairs of them: the two halves of an exact count. */
final class SortedSums {
    private SortedSums() {}

    /**
     * Sums of all subsets of the values, sorted, by size of the subset. Each value merges every list with the next smaller one raised by it, so
     * the whole is linear in the number of subsets.
     *
     * @see "E. Horowitz, S. Sahni, Journal of the ACM 21 (1974) 277-292"
     */
    static double[][] bySize(double[] values, int from, int to) {
        double[][] lists = {{0}};
        for (int item = from; item < to; item++) {
            double[][] next = new double[lists.length + 1][];
            next[0] = lists[0];
            next[lists.length] = raised(lists[lists.length - 1], values[item]);
            for (int size = 1; size < lists.length; size++) {
                next[size] = merge(lists[size], lists[size - 1], values[item]);
            }
            lists = next;
        }
        return lists;
    }

    private static double[] raised(double[] list, double by) {
        double[] raised = new double[list.length];
        for (int i = 0; i < list.length; i++) {
            raised[i] = list[i] + by;
        }
        return raised;
    }

    private static double[] merge(double[] plain, double[] other, double by) {
        double[] merged = new double[plain.length + other.length];
        int p = 0;
        int o = 0;
        for (int i = 0; i < merged.length; i++) {
            double next = o < other.length ? other[o] + by : Double.POSITIVE_INFINITY;
            if (p < plain.length && plain[p] <= next) {
                merged[i] = plain[p++];
            } else {
                merged[i] = next;
                o++;
            }
        }
        return merged;
    }

    /** All sums of one entry from each list, sorted. */
    static double[] ofChoices(double[][] choices) {
        double[] sums = {0};
        for (double[] choice : choices) {
            double[] next = new double[sums.length * choice.length];
            int at = 0;
            for (double entry : choice) {
                for (double sum : sums) {
                    next[at++] = sum + entry;
                }
            }
            sums = next;
        }
        Arrays.sort(sums);
        return sums;
    }

    /** How many pairs of one entry from each sorted list sum to at least the threshold. */
    static long pairsAtLeast(double[] first, double[] second, double threshold) {
        long count = 0;
        int from = second.length;
        for (double sum : first) {
            while (from > 0 && sum + second[from - 1] >= threshold) {
                from--;
            }
            count += second.length - from;
        }
        return count;
    }

    /** How many pairs of one entry from each sorted list sum to at most the threshold. */
    static long pairsAtMost(double[] first, double[] second, double threshold) {
        long count = 0;
        int to = second.length;
        for (double sum : first) {
            while (to > 0 && sum + second[to - 1] > threshold) {
                to--;
            }
            if (to == 0) {
                break;
            }
            count += to;
        }
        return count;
    }
}
