package coldproof.reason.sizing;

import java.util.List;
import java.util.Optional;

/**
 * An answer about size.
 *
 * @param size the size and what it can see; empty where nothing is known about noise
 * @param needed what the wanted power would take, where the plan has another size
 * @param minutes the time it takes
 * @param warnings what to know, those of the size included
 * @param mattersPercent what matters
 * @param wantedPower the power wanted
 */
public record SizingAnswer(Optional<Size> size, Optional<Size> needed, StudyMinutes minutes, List<Warning> warnings, double mattersPercent,
        double wantedPower) {
    /** Copies. */
    public SizingAnswer {
        warnings = List.copyOf(warnings);
    }
}
