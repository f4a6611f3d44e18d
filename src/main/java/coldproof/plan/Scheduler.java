package coldproof.plan;

import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.random.RandomGenerator;

/** Draws the run sheet of a plan. The same generator state gives the same sheet on every machine. */
public final class Scheduler {
    private final Plan plan;
    private final RandomGenerator chance;

    private Scheduler(Plan plan, RandomGenerator chance) {
        this.plan = plan;
        this.chance = chance;
    }

    /** Draws an order for every trial of the plan; none in which order and level coincide, wherever the counts allow another. */
    public static RunSheet draw(Plan plan, RandomGenerator chance) {
        Scheduler scheduler = new Scheduler(plan, chance);
        return switch (plan.layout().kind()) {
            case ALTERNATING -> scheduler.alternating();
            case PAIRED -> scheduler.paired();
            case SESSIONS -> scheduler.sessions();
        };
    }

    private RunSheet alternating() {
        Map<String, Integer> counts = plan.layout().counts();
        List<String> order = alternatingOrder(counts);
        List<Position> positions = new ArrayList<>();
        for (String level : order) {
            int number = positions.size() + 1;
            positions.add(new Position(number, 1, number, 0, levels(Map.of(plan.compare().factor(), level))));
        }
        return new RunSheet(positions);
    }

    private List<String> alternatingOrder(Map<String, Integer> counts) {
        int each = counts.values().iterator().next();
        boolean equal = counts.values().stream().allMatch(count -> count == each);
        if (plan.layout().order() == Order.COUNTERBALANCED && equal && each > 1) {
            return mirroredBlocks(List.copyOf(counts.keySet()), each);
        }
        return new Sequences(counts, plan.layout().order()).draw(chance);
    }

    private RunSheet paired() {
        int pairs = plan.layout().total();
        String baseline = plan.compare().baseline();
        String against = plan.compare().against().get(0);
        List<Boolean> baselineFirst = new ArrayList<>();
        for (int pair = 0; pair < pairs; pair++) {
            boolean half = plan.layout().order() == Order.COUNTERBALANCED ? pair % 2 == 0 : chance.nextBoolean();
            baselineFirst.add(half);
        }
        if (plan.layout().order() == Order.COUNTERBALANCED) {
            for (int i = pairs - 1; i > 0; i--) {
                Collections.swap(baselineFirst, i, chance.nextInt(i + 1));
            }
        }
        List<Position> positions = new ArrayList<>();
        for (int pair = 0; pair < pairs; pair++) {
            boolean first = baselineFirst.get(pair);
            for (String level : first ? List.of(baseline, against) : List.of(against, baseline)) {
                int number = positions.size() + 1;
                positions.add(new Position(number, 1, number, pair + 1, levels(Map.of(plan.compare().factor(), level))));
            }
        }
        return new RunSheet(positions);
    }

    private RunSheet sessions() {
        Optional<Factor> sessionFactor = plan.sessionFactor();
        List<String> sessionLevels = sessionFactor.isPresent() ? new Sequences(plan.layout().counts(), plan.layout().order()).draw(chance)
                : Collections.nCopies(plan.layout().total(), "");
        List<Map<String, String>> conditions = perTrialConditions();
        List<Position> positions = new ArrayList<>();
        for (int session = 1; session <= sessionLevels.size(); session++) {
            String level = sessionLevels.get(session - 1);
            Map<Map<String, String>, Map<String, String>> all = new IdentityHashMap<>(); // few conditions, perhaps thousands of trials
            for (Map<String, String> condition : conditions) {
                Map<String, String> set = new LinkedHashMap<>(condition);
                if (sessionFactor.isPresent()) {
                    set.put(sessionFactor.get().name(), level);
                }
                all.put(condition, levels(set));
            }
            int order = 1;
            for (Map<String, String> condition : withinSession(conditions)) {
                positions.add(new Position(positions.size() + 1, session, order++, 0, all.get(condition)));
            }
        }
        return new RunSheet(positions);
    }

    private List<Map<String, String>> withinSession(List<Map<String, String>> conditions) {
        int repeats = plan.layout().trialsPerCondition();
        if (conditions.size() == 1) {
            return Collections.nCopies(repeats, conditions.get(0));
        }
        if (plan.layout().order() == Order.COUNTERBALANCED) {
            return mirroredBlocks(conditions, repeats);
        }
        return freeOrder(conditions, repeats);
    }

    private List<Map<String, String>> freeOrder(List<Map<String, String>> conditions, int repeats) {
        Map<String, Integer> counts = new LinkedHashMap<>();
        for (int i = 0; i < conditions.size(); i++) {
            counts.put(Integer.toString(i), repeats);
        }
        return new Sequences(counts, Order.RANDOMISED).draw(chance).stream().map(index -> conditions.get(Integer.parseInt(index))).toList();
    }

    /** Blocks of a lot-drawn order followed by its mirror image (ABBA or BAAB for two); an odd repeat adds a lot-drawn order without one. */
    private <T> List<T> mirroredBlocks(List<T> conditions, int repeats) {
        List<T> sequence = new ArrayList<>();
        for (int block = 0; block < repeats / 2; block++) {
            List<T> order = shuffled(conditions);
            sequence.addAll(order);
            Collections.reverse(order);
            sequence.addAll(order);
        }
        if (repeats % 2 == 1) {
            sequence.addAll(shuffled(conditions));
        }
        return sequence;
    }

    private <T> List<T> shuffled(List<T> items) {
        List<T> order = new ArrayList<>(items);
        for (int i = order.size() - 1; i > 0; i--) {
            Collections.swap(order, i, chance.nextInt(i + 1));
        }
        return order;
    }

    private List<Map<String, String>> perTrialConditions() {
        List<Map<String, String>> conditions = new ArrayList<>();
        conditions.add(Map.of());
        for (Factor factor : plan.factors()) {
            if (factor.change() == Change.PER_TRIAL && factor.levels().size() > 1) {
                List<Map<String, String>> wider = new ArrayList<>();
                for (Map<String, String> condition : conditions) {
                    for (Level level : factor.levels()) {
                        Map<String, String> one = new LinkedHashMap<>(condition);
                        one.put(factor.name(), level.name());
                        wider.add(one);
                    }
                }
                conditions = wider;
            }
        }
        return conditions;
    }

    /** All factors in the plan's order: the ones given, and the only level of those that are held. */
    private Map<String, String> levels(Map<String, String> set) {
        Map<String, String> all = new LinkedHashMap<>();
        for (Factor factor : plan.factors()) {
            all.put(factor.name(), set.getOrDefault(factor.name(), factor.levels().get(0).name()));
        }
        return all;
    }
}
