package coldproof.reason.safety;

import coldproof.physics.BatteryBudget;
import coldproof.physics.Frostbite;
import coldproof.physics.WarmUpSchedule;
import coldproof.physics.WindChill;
import coldproof.quantity.Celsius;
import coldproof.quantity.ConstantWord;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How long one stay in the open air may last, and what limits it.
 *
 * @param limits every limit that applies, shortest first; empty when nothing limits it
 */
public record OutdoorBudget(List<Limit> limits) {
    /** The work and warm-up schedule is made for a shift of four hours; nobody stays out longer by it, s. */
    public static final double SHIFT_SECONDS = 4 * 3600;
    /** Done this long before sunset (common practice), s. */
    public static final double BEFORE_SUNSET_SECONDS = 30 * 60;
    /** The schedule applies to cold work; in milder air than this no exposure limit is set, °C of wind chill (start of the moderate band). */
    private static final double COLD_WORK = -9.5;

    /** What can limit a stay. */
    public enum Kind {
        /** Skin may freeze. */
        FROSTBITE,
        /** The work and warm-up schedule asks for a break in the warm. */
        COLD,
        /** The day ends. */
        DAYLIGHT,
        /** The battery ends. */
        BATTERY;

        /** As written in text and JSON. */
        public String word() {
            return ConstantWord.of(this);
        }
    }

    /**
     * One limit.
     *
     * @param kind what limits
     * @param seconds longest stay by it, s, 0 or more
     * @param because the numbers and the source behind it
     */
    public record Limit(Kind kind, double seconds, String because) {}

    /** Shortest first. */
    public OutdoorBudget {
        limits = limits.stream().sorted(Comparator.comparingDouble(Limit::seconds)).toList();
    }

    /** The limit that binds. */
    public Optional<Limit> binding() {
        return limits.stream().findFirst();
    }

    /**
     * The budget for a scene. What is not known sets no limit; a wind that is not known counts as calm.
     *
     * <p>Frostbite: the published time until bare skin may freeze. Cold: the longest stay of the work and warm-up schedule for a person who
     * does not warm up by working, at most its shift of four hours. Daylight: until half an hour before sunset. Battery: energy at hand in the
     * cold over the mean draw.
     */
    public static OutdoorBudget of(SafetyScene scene) {
        return ofValues(Derivation.of(scene, Optional.empty()));
    }

    static OutdoorBudget ofValues(Map<Reading, Value> values) {
        List<Limit> limits = new ArrayList<>();
        Value outdoors = values.get(Reading.OUTDOORS);
        if (outdoors == null || outdoors.word().equals("yes")) {
            OptionalDouble air = number(values, Reading.AIR);
            if (air.isPresent()) {
                cold(new Celsius(air.getAsDouble()), number(values, Reading.WIND).orElse(0), limits);
            }
            number(values, Reading.DAYLIGHT).ifPresent(left -> limits.add(new Limit(Kind.DAYLIGHT, Math.max(0, left - BEFORE_SUNSET_SECONDS),
                    left <= 0 ? "the sun is down" : "sunset in " + Math.round(left / 60) + " min, to be done half an hour before (common practice)")));
        }
        battery(values).ifPresent(limits::add);
        return new OutdoorBudget(limits);
    }

    private static void cold(Celsius air, double wind, List<Limit> limits) {
        double windChill = WindChill.of(air, wind).degrees();
        Frostbite.minutes(air, wind).ifPresent(minutes -> limits.add(new Limit(Kind.FROSTBITE, 60 * minutes,
                "wind chill " + Math.round(windChill) + " °C: bare skin may freeze in " + Math.round(minutes) + " min (Environment Canada)")));
        if (windChill > COLD_WORK) {
            return;
        }
        WarmUpSchedule schedule = WarmUpSchedule.of(air, wind, true);
        double longest = Math.min(SHIFT_SECONDS, 60 * schedule.longestStayMinutes());
        String asked = schedule.saysStop() ? "work that can wait should stop"
                : longest < SHIFT_SECONDS ? "at most " + Math.round(longest / 60) + " min between warm breaks" : "a shift of four hours at most";
        limits.add(new Limit(Kind.COLD, longest, asked + " (ACGIH work and warm-up schedule, light work)"));
    }

    private static Optional<Limit> battery(Map<Reading, Value> values) {
        OptionalDouble energy = number(values, Reading.BATTERY_ENERGY);
        OptionalDouble draw = number(values, Reading.DRAW);
        Value power = values.get(Reading.POWER);
        if (energy.isEmpty() || draw.isEmpty() || power != null && power.word().equals("wall")) {
            return Optional.empty();
        }
        double share = number(values, Reading.BATTERY).orElse(100) / 100;
        double cell = Math.min(60, Math.max(-40, number(values, Reading.COLDEST_CELL).orElse(20)));
        if (share <= BatteryBudget.USUAL_END_SHARE) {
            return Optional.of(new Limit(Kind.BATTERY, 0, "the charge is at or below " + Math.round(100 * BatteryBudget.USUAL_END_SHARE)
                    + " %, where machines cap their power (common practice)"));
        }
        BatteryBudget budget = new BatteryBudget(energy.getAsDouble(), share, BatteryBudget.USUAL_END_SHARE, new Celsius(cell), BatteryBudget.USUAL_RESERVE);
        return Optional.of(new Limit(Kind.BATTERY, budget.seconds(draw.getAsDouble()), Math.round(budget.availableWattHours()) + " Wh down to "
                + Math.round(100 * BatteryBudget.USUAL_END_SHARE) + " % with a fifth in reserve, cells at " + Math.round(cell) + " °C, at "
                + Math.round(draw.getAsDouble()) + " W"));
    }

    private static OptionalDouble number(Map<Reading, Value> values, Reading reading) {
        Value value = values.get(reading);
        return value == null ? OptionalDouble.empty() : value.number();
    }
}
