package coldproof.reason.sizing;

import coldproof.reason.looks.LookCost;
import java.util.ArrayList;
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
 * @param looks what looks before the end cost and save, where the plan has some
 */
public record SizingAnswer(Optional<Size> size, Optional<Size> needed, StudyMinutes minutes, List<Warning> warnings, double mattersPercent,
        double wantedPower, Optional<LookCost> looks) {
    /** Copies. */
    public SizingAnswer {
        warnings = List.copyOf(warnings);
    }

    /** Judged once, at the end. */
    public SizingAnswer(Optional<Size> size, Optional<Size> needed, StudyMinutes minutes, List<Warning> warnings, double mattersPercent, double wantedPower) {
        this(size, needed, minutes, warnings, mattersPercent, wantedPower, Optional.empty());
    }

    /** The same with one more thing to know. */
    SizingAnswer warning(Warning warning) {
        List<Warning> more = new ArrayList<>(warnings);
        more.add(warning);
        return new SizingAnswer(size, needed, minutes, more, mattersPercent, wantedPower, looks);
    }

    /** The same with what looks cost. */
    SizingAnswer with(LookCost cost) {
        return new SizingAnswer(size, needed, minutes, warnings, mattersPercent, wantedPower, Optional.of(cost));
    }
}
