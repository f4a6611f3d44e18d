package coldproof.reason.rehearse;

import coldproof.plan.Factor;
import coldproof.plan.Plan;
import coldproof.reason.rehearse.bench.BenchCondition;
import coldproof.reason.rehearse.bench.BenchParameters;
import coldproof.reason.rehearse.bench.Fan;
import coldproof.reason.rehearse.bench.Supply;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * What a plan's levels mean to a simulated device, read from their settings and their words: air where a level has a temperature, the fan
 * pinned where a factor of the fan has a level such as "maximum", the battery where a level says so, better paste where it is fresh. What
 * cannot be read changes nothing.
 */
public final class PlannedConditions {
    private static final double ROOM_CELSIUS = 21; // where the plan says nothing of the air
    private static final double FRESH_PASTE = 0.7; // of the old paste's resistance, invented
    private static final List<String> PINNED = List.of("max", "full", "pinned", "high", "fast");
    private static final List<String> FRESH = List.of("fresh", "new");

    private PlannedConditions() {}

    /** The condition of these levels. */
    public static BenchCondition of(Plan plan, Map<String, String> levels, BenchParameters device) {
        double air = ROOM_CELSIUS;
        Fan.Setting fan = Fan.Setting.AUTOMATIC;
        Supply.Source source = Supply.Source.WALL;
        double paste = 1;
        for (Factor factor : plan.factors()) {
            String level = levels.getOrDefault(factor.name(), "");
            String words = level.toLowerCase(Locale.ROOT);
            String name = factor.name().toLowerCase(Locale.ROOT);
            air = factor.levels().stream().filter(one -> one.name().equals(level)).findFirst().flatMap(one -> one.air()).map(celsius -> celsius.degrees())
                    .orElse(air);
            fan = name.contains("fan") && hasOne(words, PINNED) ? Fan.Setting.MAXIMUM : fan;
            source = words.contains("battery") && device.supply().hasBattery() ? Supply.Source.BATTERY : source;
            paste = name.contains("paste") && hasOne(words, FRESH) ? FRESH_PASTE : paste;
        }
        boolean outdoors = levels.values().stream().anyMatch(plan.budget().outdoors()::contains);
        return new BenchCondition(Math.max(-60, Math.min(60, air)), outdoors, fan, source, paste);
    }

    private static boolean hasOne(String words, List<String> of) {
        return of.stream().anyMatch(words::contains);
    }

    /** Whether the compared levels differ in a way the simulated device knows. */
    public static boolean differ(Plan plan, String against, BenchParameters device) {
        BenchCondition baseline = of(plan, Map.of(plan.compare().factor(), plan.compare().baseline()), device);
        return !baseline.equals(of(plan, Map.of(plan.compare().factor(), against), device));
    }
}
