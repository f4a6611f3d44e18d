package coldproof.reason.safety;

import coldproof.physics.RewarmTime;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The answer: what holds for a scene, and the numbers behind it.
 *
 * @param phase the part of the job asked about; empty for the whole outing
 * @param scene what was known
 * @param values readings taken and derived, as the rules saw them
 * @param cautions rules that hold, in the order of the job, within a phase the gravest first
 * @param doubts readings that are hard to believe
 * @param missing readings that rules asked for and that were not taken
 * @param rewarm wait in the room until the device is 3 K above its dew point; empty where room or device are not known, or it never gets there
 * @param charge wait until cells as cold as the device reach 10 °C; empty likewise
 * @param neverWarm whether the room, as it is, never brings the device 3 K above its dew point
 */
public record SafetyCard(Optional<Phase> phase, SafetyScene scene, Map<Reading, Value> values, List<Caution> cautions, List<Doubt> doubts,
        List<Reading> missing, Optional<RewarmTime> rewarm, Optional<RewarmTime> charge, boolean neverWarm) {
    /** Copies. */
    public SafetyCard {
        values = Map.copyOf(values);
        cautions = List.copyOf(cautions);
        doubts = List.copyOf(doubts);
        missing = List.copyOf(missing);
    }

    /** The gravest level; a reading that is hard to believe asks for care. */
    public SafetyLevel level() {
        SafetyLevel gravest = cautions.stream().map(Caution::level).max(Comparator.naturalOrder()).orElse(SafetyLevel.NOTE);
        return doubts.isEmpty() || gravest != SafetyLevel.NOTE ? gravest : SafetyLevel.CARE;
    }

    /** How long one stay in the test air may last. */
    public OutdoorBudget budget() {
        return OutdoorBudget.ofValues(values);
    }

    /** The cautions of a level. */
    public List<Caution> of(SafetyLevel level) {
        return cautions.stream().filter(caution -> caution.level() == level).toList();
    }

    /** A number behind it, where it is known. */
    public OptionalDouble number(Reading reading) {
        Value value = values.get(reading);
        return value == null ? OptionalDouble.empty() : value.number();
    }
}
