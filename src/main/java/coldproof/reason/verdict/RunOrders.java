package coldproof.reason.verdict;

import coldproof.plan.Order;
import coldproof.plan.Plan;
import coldproof.reason.orders.DrawnOrders;
import coldproof.stats.interval.Moments;
import coldproof.stats.randomisation.Effort;
import coldproof.stats.randomisation.RandomisationResult;
import coldproof.stats.randomisation.RandomisationTest;
import coldproof.stats.randomisation.Restriction;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.random.RandomGenerator;

/**
 * The run orders that could have been drawn instead of the one that was, and the test that goes through them. Where the plan is known the test
 * permutes exactly what its scheduler drew from; where only a table is known, levels are taken to have been put to sessions, pairs or trials
 * by lot. Trials that are missing leave the orders of those that are there.
 */
public final class RunOrders {
    private final Optional<Plan> plan;
    private final boolean wanted;

    private RunOrders(Optional<Plan> plan, boolean wanted) {
        this.plan = plan;
        this.wanted = wanted;
    }

    /** No randomisation test is wanted. */
    public static RunOrders untested() {
        return new RunOrders(Optional.empty(), false);
    }

    /** Nothing more is known than that levels were put to sessions, pairs or trials by lot. */
    public static RunOrders unknown() {
        return new RunOrders(Optional.empty(), true);
    }

    /** The orders a plan draws from. */
    public static RunOrders of(Plan plan) {
        return new RunOrders(Optional.of(plan), true);
    }

    /** One value to be re-assigned. */
    private record Unit(double score, boolean against) {}

    Optional<Randomisation> test(Question question, Stratum stratum, Arrangement arrangement, RandomGenerator chance) {
        if (!wanted) {
            return Optional.empty();
        }
        Optional<RandomisationTest> test = switch (stratum) {
            case BETWEEN_SESSIONS -> between(question, arrangement);
            case WITHIN_SESSIONS -> within(question, arrangement);
            case PAIRS -> pairs(question, arrangement);
            case TRIALS -> trials(question, arrangement);
        };
        return test.map(found -> found.test(Effort.forTrials(Math.max(1, arrangement.trials().size())), chance)).map(RunOrders::outcome);
    }

    private static Randomisation outcome(RandomisationResult result) {
        return new Randomisation(result.p(), result.assignments(), result.smallestP(), result.exact());
    }

    private boolean counterbalanced() {
        return plan.isPresent() && plan.get().layout().order() == Order.COUNTERBALANCED;
    }

    private Optional<RandomisationTest> between(Question question, Arrangement arrangement) {
        List<Unit> units = new ArrayList<>();
        for (List<Observation> session : arrangement.sessions().values()) {
            double mean = Moments.of(LogScores.of(session, question.better())).mean();
            units.add(new Unit(mean, session.get(0).level().equals(question.against())));
        }
        return Optional.of(groups(units));
    }

    /** Re-assigns levels to single values, among the orders the plan allows if the order that was run is one of them. */
    private RandomisationTest groups(List<Unit> units) {
        double[] scores = units.stream().mapToDouble(Unit::score).toArray();
        boolean[] against = against(units);
        int changed = (int) units.stream().filter(Unit::against).count();
        Restriction restriction = plan.isPresent() ? DrawnOrders.restriction(plan.get().layout().order(), units.size() - changed, changed) : Restriction.NONE;
        return RandomisationTest.ofGroups(scores, against, restriction.allows(against.clone()) ? restriction : Restriction.NONE);
    }

    private static boolean[] against(List<Unit> units) {
        boolean[] against = new boolean[units.size()];
        for (int i = 0; i < against.length; i++) {
            against[i] = units.get(i).against();
        }
        return against;
    }

    /** Inside every session, and inside it for every condition of the other factors, the levels are re-assigned among its trials. */
    private Optional<RandomisationTest> within(Question question, Arrangement arrangement) {
        List<List<Unit>> cells = new ArrayList<>();
        for (List<Observation> session : arrangement.sessions().values()) {
            Map<List<String>, List<Observation>> byCondition = new LinkedHashMap<>();
            session.forEach(trial -> byCondition.computeIfAbsent(trial.adjust(), condition -> new ArrayList<>()).add(trial));
            byCondition.values().forEach(cell -> cells.add(inOrder(question, cell)));
        }
        return bySequences(cells);
    }

    private static List<Unit> inOrder(Question question, List<Observation> trials) {
        List<Observation> ordered = new ArrayList<>(trials);
        if (trials.stream().noneMatch(trial -> Double.isNaN(trial.order()))) {
            ordered.sort(Comparator.comparingDouble(Observation::order));
        }
        return ordered.stream().map(trial -> new Unit(LogScores.of(trial, question.better()), trial.level().equals(question.against()))).toList();
    }

    private Optional<RandomisationTest> bySequences(List<List<Unit>> cells) {
        List<List<Unit>> mixed = cells.stream().filter(cell -> cell.stream().map(Unit::against).distinct().count() == 2).toList();
        if (mixed.isEmpty()) {
            return Optional.empty();
        }
        int total = mixed.stream().mapToInt(List::size).sum();
        double[] scores = new double[total];
        int[] label = new int[total];
        boolean[] against = new boolean[total];
        int at = 0;
        for (int cell = 0; cell < mixed.size(); cell++) {
            for (Unit unit : mixed.get(cell)) {
                scores[at] = unit.score();
                label[at] = cell;
                against[at++] = unit.against();
            }
        }
        if (counterbalanced() && mixed.stream().allMatch(cell -> mirrored(against(cell)).isPresent())) {
            List<List<boolean[]>> allowed = mixed.stream().map(cell -> mirrored(against(cell)).orElseThrow()).toList();
            return Optional.of(RandomisationTest.ofSequences(scores, label, against, allowed));
        }
        boolean noneSeparated = mixed.stream().allMatch(cell -> Restriction.NOT_SEPARATED.allows(against(cell)));
        Restriction restriction = plan.isPresent() && noneSeparated ? Restriction.NOT_SEPARATED : Restriction.NONE;
        return Optional.of(RandomisationTest.withinSessions(scores, label, against, restriction));
    }

    /** The orders in blocks of a lot-drawn order and its mirror image; empty where the order that was run is none of them. */
    private static Optional<List<boolean[]>> mirrored(boolean[] observed) {
        List<boolean[]> orders = observed.length % 2 == 1 ? List.of() : DrawnOrders.mirrored(observed.length);
        return orders.stream().anyMatch(order -> Arrays.equals(order, observed)) ? Optional.of(orders) : Optional.empty();
    }

    private Optional<RandomisationTest> pairs(Question question, Arrangement arrangement) {
        List<Observation[]> whole = arrangement.pairs();
        double[] differences = whole.stream().mapToDouble(both -> LogScores.of(both[1], question.better()) - LogScores.of(both[0], question.better())).toArray();
        boolean[] baselineFirst = new boolean[whole.size()];
        int first = 0;
        for (int i = 0; i < baselineFirst.length; i++) {
            baselineFirst[i] = whole.get(i)[0].order() < whole.get(i)[1].order();
            first += baselineFirst[i] ? 1 : 0;
        }
        if (counterbalanced() && first > 0 && first < baselineFirst.length) {
            return Optional.of(RandomisationTest.ofCounterbalancedPairs(differences, baselineFirst));
        }
        return Optional.of(RandomisationTest.ofPairs(differences));
    }

    private Optional<RandomisationTest> trials(Question question, Arrangement arrangement) {
        List<Unit> ordered = inOrder(question, arrangement.trials());
        if (plan.isPresent() && DrawnOrders.inBlocks(plan.get()) && ordered.size() == plan.get().layout().total()) {
            List<List<Unit>> cells = new ArrayList<>();
            for (int start = 0; start < ordered.size(); start += 4) {
                cells.add(ordered.subList(start, Math.min(ordered.size(), start + 4)));
            }
            return bySequences(cells);
        }
        return Optional.of(groups(ordered));
    }
}
