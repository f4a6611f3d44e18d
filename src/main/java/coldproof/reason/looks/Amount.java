package coldproof.reason.looks;

import coldproof.plan.Layout;
import coldproof.plan.Plan;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** How much trials tell about the changes of a plan, by counting what the change is tested against. */
final class Amount {
    private final Plan plan;
    private final List<String> levels = new ArrayList<>();

    Amount(Plan plan) {
        this.plan = plan;
        levels.add(plan.compare().baseline());
        levels.addAll(plan.compare().against());
    }

    /** One trial, planned or run. */
    record Unit(String level, int session, int pair) {}

    boolean countsSessions() {
        return plan.layout().kind() == Layout.Kind.SESSIONS && plan.comparesSessions();
    }

    boolean countsPairs() {
        return plan.layout().kind() == Layout.Kind.PAIRED;
    }

    /** Whatever stands for one observation of a level: whole pairs, sessions of one level, or single trials; in order. */
    private List<String> units(List<Unit> trials) {
        if (!countsSessions()) {
            return trials.stream().map(Unit::level).filter(levels::contains).toList();
        }
        Map<Integer, String> bySession = new LinkedHashMap<>();
        trials.stream().filter(trial -> levels.contains(trial.level())).forEach(trial -> bySession.putIfAbsent(trial.session(), trial.level()));
        return List.copyOf(bySession.values());
    }

    private static long count(List<String> units, String level) {
        return units.stream().filter(level::equals).count();
    }

    private long wholePairs(List<Unit> trials) {
        Map<Integer, Set<String>> byPair = new LinkedHashMap<>();
        trials.forEach(trial -> byPair.computeIfAbsent(trial.pair(), pair -> new HashSet<>()).add(trial.level()));
        return byPair.values().stream().filter(found -> found.size() == 2).count();
    }

    /** Inverse variance of the change that these trials tell least about, but for a constant; 0 where they tell nothing. */
    double information(List<Unit> trials) {
        if (countsPairs()) {
            return wholePairs(trials);
        }
        List<String> units = units(trials);
        double baseline = count(units, plan.compare().baseline());
        return plan.compare().against().stream().mapToDouble(level -> 1 / (1 / baseline + 1.0 / count(units, level))).min().orElse(0);
    }

    /** Degrees of freedom of the noise; below 1 where there is none to tell. */
    double degreesOfFreedom(List<Unit> trials) {
        if (countsPairs()) {
            return wholePairs(trials) - 1;
        }
        int units = units(trials).size();
        boolean within = plan.layout().kind() == Layout.Kind.SESSIONS && !countsSessions();
        int left = units - (int) trials.stream().mapToInt(Unit::session).distinct().count();
        return within ? left - PlannedEffects.withinSessions(plan, levels.size(), left) : units - levels.size();
    }

    /** Whether trials as far as these can carry a verdict: noise that can be told from the change, and the change from a trend. */
    boolean carriesVerdict(List<Unit> trials) {
        if (!(degreesOfFreedom(trials) >= 1)) {
            return false;
        }
        if (countsPairs()) {
            return true;
        }
        List<String> units = units(trials);
        int fewest = countsSessions() ? 2 : 1;
        boolean within = plan.layout().kind() == Layout.Kind.SESSIONS && !countsSessions();
        for (String level : levels) {
            if (count(units, level) < fewest || !within && !level.equals(levels.get(0)) && separated(units, level)) {
                return false;
            }
        }
        return true;
    }

    /** Whether all of one level came before all of the other. */
    private boolean separated(List<String> units, String level) {
        List<String> two = units.stream().filter(unit -> unit.equals(level) || unit.equals(levels.get(0))).toList();
        int changes = 0;
        for (int i = 1; i < two.size(); i++) {
            changes += two.get(i).equals(two.get(i - 1)) ? 0 : 1;
        }
        return changes < 2;
    }
}
