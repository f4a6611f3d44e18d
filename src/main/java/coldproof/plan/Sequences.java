package coldproof.plan;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.random.RandomGenerator;

/**
 * A set of orders of levels to draw one from, each as likely as the others. What was drawn from is also what a randomisation test permutes.
 *
 * @param counts how often each level occurs
 * @param order randomised: all orders but those with one level wholly before another; counterbalanced: of these, the orders in which no two
 *     levels' mean places differ by more than a fifth of the length (or by the least possible, where that is more)
 */
public record Sequences(Map<String, Integer> counts, Order order) {
    private static final double BALANCE = 0.2; // share of the length; the fully separated order has 0.5
    private static final int MOST_DRAWS = 100_000;

    /** Copies, keeping the order. */
    public Sequences {
        counts = Collections.unmodifiableMap(new LinkedHashMap<>(counts));
    }

    /** How many places there are. */
    public int length() {
        int length = 0;
        for (int count : counts.values()) {
            length += count;
        }
        return length;
    }

    /** Whether a whole order belongs to the set. {@code places} holds for each place the index of its level in {@code counts}. */
    public boolean allows(int[] places) {
        int levels = counts.size();
        double[] sum = new double[levels];
        int[] first = new int[levels];
        int[] last = new int[levels];
        int[] seen = new int[levels];
        for (int i = 0; i < places.length; i++) {
            int level = places[i];
            first[level] = seen[level] == 0 ? i : first[level];
            last[level] = i;
            seen[level]++;
            sum[level] += i;
        }
        double furthest = 0;
        for (int a = 0; a < levels; a++) {
            for (int b = 0; b < levels; b++) {
                if (a == b || seen[a] == 0 || seen[b] == 0) {
                    continue;
                }
                boolean avoidable = seen[a] + seen[b] > 2;
                if (avoidable && last[a] < first[b] && !(levels > 2 && (seen[a] == 1 || seen[b] == 1))) {
                    return false;
                }
                furthest = Math.max(furthest, Math.abs(sum[a] / seen[a] - sum[b] / seen[b]));
            }
        }
        return order == Order.RANDOMISED || furthest <= tolerance(places.length, seen);
    }

    /**
     * How many orders of two levels the set has, counted by the sums their places can have instead of one by one.
     *
     * @return a whole number, exact below 2^53
     * @throws IllegalStateException if there are not two levels
     */
    public double countOfTwo() {
        List<Integer> each = List.copyOf(counts.values());
        if (each.size() != 2) {
            throw new IllegalStateException("two levels are counted, not " + each.size());
        }
        int length = length();
        int chosen = each.get(1);
        int total = length * (length - 1) / 2;
        double[][] ways = new double[chosen + 1][total + 1]; // ways to give so many places with such a sum to the second level
        ways[0][0] = 1;
        for (int place = 0; place < length; place++) {
            for (int many = Math.min(chosen, place + 1); many > 0; many--) {
                for (int sum = total; sum >= place; sum--) {
                    ways[many][sum] += ways[many - 1][sum - place];
                }
            }
        }
        double allowed = 0;
        int[] seen = {each.get(0), chosen};
        for (int sum = 0; sum <= total; sum++) {
            boolean within = order == Order.RANDOMISED
                    || Math.abs((double) sum / chosen - (double) (total - sum) / seen[0]) <= tolerance(length, seen);
            allowed += within ? ways[chosen][sum] - (isSeparated(sum, chosen, length) ? 1 : 0) : 0;
        }
        return allowed;
    }

    /** Whether the one order with this sum has a level wholly before the other; with one place for each there is no other order. */
    private static boolean isSeparated(int sum, int chosen, int length) {
        int least = chosen * (chosen - 1) / 2;
        return length > 2 && (sum == least || sum == least + chosen * (length - chosen));
    }

    /** From the counts seen, not from the map: millions of orders are asked about when all are gone through. */
    private static double tolerance(int length, int[] seen) {
        int smallest = Integer.MAX_VALUE;
        for (int count : seen) {
            smallest = Math.min(smallest, count);
        }
        // With a level that occurs once or twice a fifth may be out of reach: its own place decides.
        double reachable = smallest == 1 ? length / 2.0 : 0;
        return Math.max(BALANCE * length, reachable);
    }

    /** Draws an order: the level's name for each place. */
    public List<String> draw(RandomGenerator chance) {
        List<String> names = List.copyOf(counts.keySet());
        int[] places = new int[length()];
        int filled = 0;
        for (int level = 0; level < names.size(); level++) {
            for (int i = 0; i < counts.get(names.get(level)); i++) {
                places[filled++] = level;
            }
        }
        int draws = 0;
        do {
            shuffle(places, chance);
            draws++;
        } while (!allows(places) && draws < MOST_DRAWS);
        if (!allows(places)) {
            throw new IllegalStateException("no allowed order of " + counts + " was met in " + MOST_DRAWS + " draws");
        }
        List<String> order = new ArrayList<>();
        for (int place : places) {
            order.add(names.get(place));
        }
        return order;
    }

    /** Fisher and Yates: every order equally likely. */
    static void shuffle(int[] values, RandomGenerator chance) {
        for (int i = values.length - 1; i > 0; i--) {
            int j = chance.nextInt(i + 1);
            int kept = values[i];
            values[i] = values[j];
            values[j] = kept;
        }
    }
}
