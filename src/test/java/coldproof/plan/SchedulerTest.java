package coldproof.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class SchedulerTest {
    static Plan plan(Layout layout, Factor... factors) {
        Factor compared = factors[0];
        return new Plan("t", "d", new Metric("rate", "1/s", Better.HIGHER),
                new Comparison(compared.name(), compared.levelNames().get(0), List.of(compared.levelNames().get(1))), 3, Claim.GAIN, List.of(factors),
                Optional.empty(), new Errors(0.05, 0.1), 1, layout, new Budget(OptionalDouble.empty(), 0, Map.of(), List.of(), OptionalDouble.empty()),
                StartConditions.NONE, AbortLimits.NONE, Workload.NONE, 1);
    }

    static Map<String, Integer> counts(String a, int countA, String b, int countB) {
        Map<String, Integer> counts = new LinkedHashMap<>();
        counts.put(a, countA);
        counts.put(b, countB);
        return counts;
    }

    private static Factor factor(String name, Change change, String... levels) {
        return new Factor(name, change, Arrays.stream(levels).map(Level::named).toList());
    }

    private static String letters(RunSheet sheet, String factor) {
        StringBuilder letters = new StringBuilder();
        sheet.positions().forEach(position -> letters.append(position.levels().get(factor)));
        return letters.toString();
    }

    @Test
    void aSteadyDriftCancelsInCounterbalancedTrials() {
        Plan plan = plan(new Layout(Layout.Kind.ALTERNATING, counts("A", 8, "B", 8), 1, Order.COUNTERBALANCED), factor("fan", Change.PER_TRIAL, "A", "B"));
        for (int seed = 0; seed < 200; seed++) {
            int drift = 0;
            for (Position position : Scheduler.draw(plan, new SplittableRandom(seed)).positions()) {
                drift += position.levels().get("fan").equals("A") ? position.number() : -position.number();
            }
            assertEquals(0, drift, "seed " + seed);
        }
    }

    @Test
    void noOrderEverHasOneLevelWhollyBeforeTheOther() {
        for (Order order : Order.values()) {
            for (int[] sizes : new int[][] {{2, 2}, {3, 3}, {4, 3}, {2, 5}, {4, 4}}) {
                Plan plan = plan(new Layout(Layout.Kind.SESSIONS, counts("A", sizes[0], "B", sizes[1]), 1, order), factor("air", Change.PER_SESSION, "A", "B"));
                for (int seed = 0; seed < 300; seed++) {
                    String letters = letters(Scheduler.draw(plan, new SplittableRandom(seed)), "air");
                    assertEquals(sizes[0] + sizes[1], letters.length());
                    assertFalse(letters.matches("A+B+|B+A+"), letters);
                }
            }
        }
    }

    @Test
    void everyAllowedOrderOfSessionsIsEquallyLikely() {
        Plan plan = plan(new Layout(Layout.Kind.SESSIONS, counts("A", 3, "B", 3), 1, Order.RANDOMISED), factor("air", Change.PER_SESSION, "A", "B"));
        SplittableRandom chance = new SplittableRandom(11);
        Map<String, Integer> seen = new HashMap<>();
        int draws = 18_000;
        for (int i = 0; i < draws; i++) {
            seen.merge(letters(Scheduler.draw(plan, chance), "air"), 1, Integer::sum);
        }
        assertEquals(18, seen.size()); // C(6,3) = 20 less the two separated ones
        double chiSquare = seen.values().stream().mapToDouble(count -> Math.pow(count - draws / 18.0, 2) / (draws / 18.0)).sum();
        assertTrue(chiSquare < 40.8, "chi-square " + chiSquare); // upper 0.1 % point with 17 df: 40.79, table of the e-Handbook 1.3.6.7.4
    }

    @Test
    void aSessionHoldsEveryConditionTheAskedNumberOfTimes() {
        Plan plan = plan(new Layout(Layout.Kind.SESSIONS, counts("room", 4, "cold", 3), 2, Order.COUNTERBALANCED),
                factor("air", Change.PER_SESSION, "room", "cold"), factor("fan", Change.PER_TRIAL, "auto", "max"));
        RunSheet sheet = Scheduler.draw(plan, new SplittableRandom(3));
        assertEquals(28, sheet.positions().size());
        for (int session = 1; session <= 7; session++) {
            List<String> fans = new ArrayList<>();
            sheet.ofSession(session).forEach(position -> fans.add(position.levels().get("fan")));
            assertTrue(fans.equals(List.of("auto", "max", "max", "auto")) || fans.equals(List.of("max", "auto", "auto", "max")), fans.toString());
        }
    }

    @Test
    void pairsHoldOneTrialOfEachLevel() {
        Plan plan = plan(new Layout(Layout.Kind.PAIRED, Map.of("", 6), 1, Order.RANDOMISED), factor("source", Change.PER_TRIAL, "wall", "battery"));
        RunSheet sheet = Scheduler.draw(plan, new SplittableRandom(5));
        assertEquals(12, sheet.positions().size());
        for (int pair = 0; pair < 6; pair++) {
            Position first = sheet.positions().get(2 * pair);
            Position second = sheet.positions().get(2 * pair + 1);
            assertEquals(first.pair(), second.pair());
            assertFalse(first.levels().equals(second.levels()));
        }
    }

    @Test
    void theSameSeedGivesTheSameSheet() {
        Plan plan = plan(new Layout(Layout.Kind.ALTERNATING, counts("A", 7, "B", 5), 1, Order.RANDOMISED), factor("fan", Change.PER_TRIAL, "A", "B"));
        assertEquals(Scheduler.draw(plan, new SplittableRandom(42)), Scheduler.draw(plan, new SplittableRandom(42)));
    }
}
