package coldproof.reason.safety;

import coldproof.physics.LumpedBody;
import coldproof.physics.RewarmTime;
import coldproof.physics.TimeConstant;
import coldproof.physics.WindChill;
import coldproof.quantity.Celsius;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/** Judges a scene by the rules. */
public final class Cautions {
    /** A surface this far above the dew point may be powered (practice of ISO 8502-4 in coatings, secondary source), K. */
    public static final double DRY_MARGIN = 3;
    /** Cells from this temperature on take the full charging current (charger data sheets; IEC 62133-2 from memory), °C. */
    public static final double FULL_CHARGE_FROM = 10;

    private Cautions() {}

    /**
     * What holds.
     *
     * <p>Without a phase the whole outing is judged: a device that was not measured is not guessed at, the wait after coming in is told
     * instead. With a phase only its rules are judged, and after the return a device that was not measured counts as being at the test
     * air's temperature. A rule whose reading is not known does not hold; the reading is named as missing.
     *
     * @param rules the rules in force
     * @param phase the part of the job about to begin
     * @param tau how fast the device warms up in the room
     */
    public static SafetyCard judge(List<SafetyRule> rules, SafetyScene scene, Optional<Phase> phase, TimeConstant tau) {
        Map<Reading, Value> values = Derivation.of(scene, phase);
        List<Caution> cautions = new ArrayList<>();
        Set<Reading> missing = EnumSet.noneOf(Reading.class);
        for (SafetyRule rule : rules) {
            if (phase.isEmpty() || rule.belongsTo(phase.get())) {
                judge(rule, values, missing).ifPresent(decided -> cautions.add(new Caution(rule, phase.orElse(rule.phase()), decided)));
            }
        }
        if (calmIsOnlyAssumed(values)) {
            missing.add(Reading.WIND);
        }
        cautions.sort(Comparator.comparing(Caution::phase).thenComparing(Comparator.comparing(Caution::level).reversed()));
        OptionalDouble device = number(values, Reading.DEVICE).isPresent() ? number(values, Reading.DEVICE) : number(values, Reading.AIR);
        OptionalDouble dry = number(values, Reading.ROOM_DEW_POINT).stream().map(dew -> dew + DRY_MARGIN).findFirst();
        Optional<RewarmTime> rewarm = wait(dry, device, number(values, Reading.ROOM), tau);
        Optional<RewarmTime> charge = wait(OptionalDouble.of(FULL_CHARGE_FROM), device, number(values, Reading.ROOM), tau);
        boolean never = rewarm.isEmpty() && device.isPresent() && dry.isPresent();
        return new SafetyCard(phase, scene, values, cautions, Plausibility.of(values), List.copyOf(missing), rewarm, charge, never);
    }

    /** Cold is judged by wind chill, which counts a wind that was not given as calm: that is to be said. */
    private static boolean calmIsOnlyAssumed(Map<Reading, Value> values) {
        return !values.containsKey(Reading.WIND) && values.get(Reading.OUTDOORS).word().equals("yes")
                && number(values, Reading.AIR).orElse(Double.POSITIVE_INFINITY) <= WindChill.WARMEST_AIR;
    }

    /** What decided the rule, if it holds. */
    private static Optional<Map<Reading, Value>> judge(SafetyRule rule, Map<Reading, Value> values, Set<Reading> missing) {
        Map<Reading, Value> decided = new LinkedHashMap<>();
        Set<Reading> unknown = EnumSet.noneOf(Reading.class);
        for (Condition condition : rule.when()) {
            Value value = values.get(condition.reading());
            if (value == null) {
                unknown.add(condition.reading());
            } else if (!condition.holds(value)) {
                return Optional.empty();
            } else {
                decided.put(condition.reading(), value);
            }
        }
        if (!unknown.isEmpty()) {
            unknown.forEach(reading -> Derivation.inputs(reading).stream().filter(input -> !values.containsKey(input)).forEach(missing::add));
            return Optional.empty();
        }
        return Optional.of(decided);
    }

    private static Optional<RewarmTime> wait(OptionalDouble target, OptionalDouble device, OptionalDouble room, TimeConstant tau) {
        if (target.isEmpty() || device.isEmpty() || room.isEmpty()) {
            return Optional.empty();
        }
        return LumpedBody.rewarm(new Celsius(target.getAsDouble()), new Celsius(device.getAsDouble()), new Celsius(room.getAsDouble()), tau);
    }

    private static OptionalDouble number(Map<Reading, Value> values, Reading reading) {
        Value value = values.get(reading);
        return value == null ? OptionalDouble.empty() : value.number();
    }
}
