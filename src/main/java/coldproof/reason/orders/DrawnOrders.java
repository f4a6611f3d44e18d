package coldproof.reason.orders;

import coldproof.plan.Layout;
import coldproof.plan.Order;
import coldproof.plan.Plan;
import coldproof.plan.Sequences;
import coldproof.stats.randomisation.RandomisationScheme;
import coldproof.stats.randomisation.Restriction;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/** What the scheduler draws from, told to the mathematics of randomisation. */
public final class DrawnOrders {
    private static final int MOST_LISTED = 1 << 12; // sequences of one session; beyond, any order of its levels is taken

    private DrawnOrders() {}

    /** How many assignments of the compared levels a plan draws from, and the smallest p a randomisation test of it can give. */
    public static RandomisationScheme of(Plan plan) {
        Layout layout = plan.layout();
        int total = layout.total();
        return switch (layout.kind()) {
            case PAIRED -> layout.order() == Order.COUNTERBALANCED && total > 1
                    ? RandomisationScheme.counterbalancedPairs(total - total / 2, total / 2) : RandomisationScheme.pairs(total);
            case ALTERNATING -> inBlocks(plan) ? blocks(count(plan, plan.compare().baseline()), 1) : ofGroups(plan);
            case SESSIONS -> plan.comparesSessions() ? ofGroups(plan) : within(plan);
        };
    }

    private static int count(Plan plan, String level) {
        return plan.layout().counts().getOrDefault(level, 0);
    }

    private static RandomisationScheme ofGroups(Plan plan) {
        int baseline = count(plan, plan.compare().baseline());
        int against = count(plan, plan.compare().against().get(0));
        return RandomisationScheme.groups(baseline, against, restriction(plan.layout().order(), baseline, against));
    }

    private static RandomisationScheme within(Plan plan) {
        int repeats = plan.layout().trialsPerCondition();
        int cells = plan.layout().total() * otherConditions(plan);
        if (plan.layout().order() == Order.COUNTERBALANCED && mirrored(2 * repeats).size() > 0) {
            return blocks(repeats, cells);
        }
        int[] each = new int[cells];
        Arrays.fill(each, repeats);
        return RandomisationScheme.within(each, each, Restriction.NOT_SEPARATED);
    }

    /** Conditions of the other factors that are set per trial. */
    private static int otherConditions(Plan plan) {
        int conditions = 1;
        for (coldproof.plan.Factor factor : plan.factors()) {
            boolean other = factor.change() == coldproof.plan.Change.PER_TRIAL && !factor.name().equals(plan.compare().factor());
            conditions *= other ? factor.levels().size() : 1;
        }
        return conditions;
    }

    private static RandomisationScheme blocks(int repeats, int cells) {
        List<List<boolean[]>> allowed = new ArrayList<>();
        for (int cell = 0; cell < cells; cell++) {
            for (int block = 0; block < repeats / 2; block++) {
                allowed.add(mirrored(4));
            }
            if (repeats % 2 == 1) {
                allowed.add(mirrored(2));
            }
        }
        return RandomisationScheme.sequences(allowed);
    }

    /** Whether single trials are drawn as blocks of a lot-drawn order and its mirror image. */
    public static boolean inBlocks(Plan plan) {
        Map<String, Integer> counts = plan.layout().counts();
        return plan.layout().kind() == Layout.Kind.ALTERNATING && plan.layout().order() == Order.COUNTERBALANCED && plan.compare().against().size() == 1
                && counts.values().stream().distinct().count() == 1 && counts.values().iterator().next() > 1;
    }

    /** The orders of two groups that the scheduler allows. */
    public static Restriction restriction(Order order, int baseline, int against) {
        Map<String, Integer> counts = new LinkedHashMap<>();
        counts.put("baseline", baseline);
        counts.put("against", against);
        Sequences sequences = new Sequences(counts, order);
        int[] places = new int[baseline + against];
        return new Restriction() {
            @Override
            public boolean allows(boolean[] isAgainst) {
                for (int i = 0; i < places.length; i++) {
                    places[i] = isAgainst[i] ? 1 : 0;
                }
                return sequences.allows(places);
            }

            @Override
            public OptionalDouble allowed(int ofBaseline, int ofAgainst) {
                return OptionalDouble.of(sequences.countOfTwo());
            }
        };
    }

    /** All orders of so many places made of blocks ABBA or BAAB, an odd pair AB or BA at the end; empty where there are too many to list. */
    public static List<boolean[]> mirrored(int places) {
        List<boolean[]> orders = new ArrayList<>();
        orders.add(new boolean[0]);
        for (int start = 0; start < places; start += 4) {
            int size = Math.min(4, places - start);
            List<boolean[]> longer = new ArrayList<>();
            for (boolean[] order : orders) {
                longer.add(extended(order, size, false));
                longer.add(extended(order, size, true));
            }
            if (longer.size() > MOST_LISTED) {
                return Collections.emptyList();
            }
            orders = longer;
        }
        return orders;
    }

    private static boolean[] extended(boolean[] order, int size, boolean first) {
        boolean[] longer = Arrays.copyOf(order, order.length + size);
        for (int i = 0; i < size; i++) {
            boolean outer = size == 4 ? i == 0 || i == 3 : i == 0;
            longer[order.length + i] = outer == first;
        }
        return longer;
    }
}
