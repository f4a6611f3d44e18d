package coldproof.report.page;

import coldproof.plan.Plan;
import coldproof.report.plot.Ink;
import coldproof.report.plot.Plot.Key;
import coldproof.report.plot.Shape;
import java.util.ArrayList;
import java.util.List;

/** The levels of the compared factor, the baseline first, each with its ink and shape. */
final class Levels {
    private final String factor;
    private final List<String> names = new ArrayList<>();

    Levels(Plan plan) {
        factor = plan.compare().factor();
        names.add(plan.compare().baseline());
        names.addAll(plan.compare().against());
        plan.comparedFactor().levelNames().stream().filter(name -> !names.contains(name)).forEach(names::add);
    }

    List<String> names() {
        return names;
    }

    Ink ink(String level) {
        return Ink.ofLevel(Math.max(0, names.indexOf(level)));
    }

    Shape shape(String level) {
        return Shape.ofLevel(Math.max(0, names.indexOf(level)));
    }

    /** Keys of those levels that occur. */
    List<Key> keys(List<Scores.Run> runs) {
        return names.stream().filter(name -> runs.stream().anyMatch(run -> run.level().equals(name)))
                .map(name -> Key.point(ink(name), shape(name), factor + " " + name)).toList();
    }
}
