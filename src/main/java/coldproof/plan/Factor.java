package coldproof.plan;

import java.util.List;

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

    /** The names of its levels, in order. */
    public List<String> levelNames() {
        return levels.stream().map(Level::name).toList();
    }
}
