package coldproof.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Something that is set on purpose.
 *
 * @param name such as "ambient"
 * @param change how often it is set
 * @param levels its settings, at least one; one means it is held
 */
public record Factor(String name, Change change, List<Level> levels) {
    /** Copies; refuses a factor without levels. */
    public Factor {
        if (levels.isEmpty()) {
            throw new IllegalArgumentException("factor " + name + " has no levels");
        }
        levels = List.copyOf(levels);
    }

    /** The one with a name among these, if there is one. */
    public static Optional<Factor> named(String name, List<Factor> factors) {
        for (Factor factor : factors) {
            if (factor.name.equals(name)) {
                return Optional.of(factor);
            }
        }
        return Optional.empty();
    }

    /** The first of these that is set once a session and has several levels, if there is one. */
    public static Optional<Factor> ofSessions(List<Factor> factors) {
        for (Factor factor : factors) {
            if (factor.variesBySession()) {
                return Optional.of(factor);
            }
        }
        return Optional.empty();
    }

    /** Whether it is set once a session and has several levels. */
    public boolean variesBySession() {
        return change == Change.PER_SESSION && levels.size() > 1;
    }

    /** The names of its levels, in order. */
    public List<String> levelNames() {
        List<String> names = new ArrayList<>();
        for (Level level : levels) {
            names.add(level.name());
        }
        return List.copyOf(names);
    }
}
