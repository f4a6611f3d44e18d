package coldproof.plan;

import java.util.List;

/**
 * The question: which levels of which factor.
 *
 * @param factor its name
 * @param baseline the level compared with
 * @param against the changed levels, at least one; several are judged together
 */
public record Comparison(String factor, String baseline, List<String> against) {
    /** Copies; refuses a comparison with nothing. */
    public Comparison {
        if (against.isEmpty()) {
            throw new IllegalArgumentException("nothing is compared with " + baseline);
        }
        against = List.copyOf(against);
    }
}
